package main

import "strings"

// options splits arguments into flags and the rest, in any order. takes names
// the flags that have a value, bare those that have none.
func options(args []string, takes, bare []string) (values map[string]string, rest []string, err error) {
	values = map[string]string{}
	for i := 0; i < len(args); i++ {
		a := args[i]
		if !strings.HasPrefix(a, "-") || a == "-" {
			rest = append(rest, a)
			continue
		}
		name, value, has := strings.Cut(strings.TrimPrefix(strings.TrimPrefix(a, "-"), "-"), "=")
		if _, twice := values[name]; twice {
			return nil, nil, misuse("--%s is given twice", name)
		}
		switch {
		case contains(bare, name) && !has:
			values[name] = "yes"
		case contains(takes, name) && has:
			values[name] = value
		case contains(takes, name):
			if i++; i >= len(args) {
				return nil, nil, misuse("--%s needs a value", name)
			}
			values[name] = args[i]
		default:
			return nil, nil, misuse("unknown flag %s", a)
		}
	}
	return values, rest, nil
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
