package rubrics

import (
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"

	"asfound/rubrics/appraisal"

	"github.com/go-playground/validator/v10"
)

var slug = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// rules is the validator with the files' own key names and the slug rule.
var rules = sync.OnceValue(func() *validator.Validate {
	v := validator.New(validator.WithRequiredStructEnabled())
	v.RegisterTagNameFunc(yamlName)
	if err := v.RegisterValidation("slug", func(fl validator.FieldLevel) bool {
		return slug.MatchString(fl.Field().String())
	}); err != nil {
		panic(err) // a programming error: the tag name is fixed
	}
	return v
})

// fieldRules checks the tags of a decoded struct.
func (c *checker) fieldRules(value any) {
	err := rules().Struct(value)
	var found validator.ValidationErrors
	if errors.As(err, &found) {
		for _, fe := range found {
			what, right := broken(fe)
			c.say(fieldPath(fe.Namespace()), what, right)
		}
	}
}

var mapKey = regexp.MustCompile(`\[([^\]]*[^\]0-9][^\]]*)\]`)

// fieldPath turns Rubric.care.prior[private][1] into care.prior.private[1].
func fieldPath(namespace string) string {
	_, path, _ := strings.Cut(namespace, ".")
	return mapKey.ReplaceAllString(path, ".$1")
}

// broken says what a field breaks and what would be right.
func broken(fe validator.FieldError) (what, right string) {
	shown := show(fe.Value())
	size := func(bound string) (string, string) {
		switch fe.Kind() {
		case reflect.String:
			return fmt.Sprintf("has %d characters", utf8.RuneCountInString(fe.Value().(string))), bound + " " + fe.Param()
		case reflect.Slice, reflect.Map:
			return fmt.Sprintf("has %d entries", reflect.ValueOf(fe.Value()).Len()), bound + " " + fe.Param()
		}
		return shown + " is out of range", bound + " " + fe.Param()
	}
	switch fe.Tag() {
	case "required":
		return appraisal.IsMissing, "write it"
	case "required_if":
		key, value, _ := strings.Cut(fe.Param(), " ")
		return appraisal.IsMissing, fmt.Sprintf("needed where %s is %s", strings.ToLower(key), value)
	case "slug":
		return shown + " is no id", "small letters, digits and single hyphens, like lift-cable"
	case "ne":
		return shown + " is a reserved word", "choose another id"
	case "oneof":
		return shown + " is not known", "one of " + strings.Join(strings.Fields(fe.Param()), ", ")
	case "min", "gte":
		return size("at least")
	case "max", "lte":
		return size("at most")
	case "gt":
		return size("more than")
	case "lt":
		return size("less than")
	case "gtefield":
		return fmt.Sprintf("%s is less than %s", shown, strings.ToLower(fe.Param())), "low, likely, high must not fall"
	case "len":
		return fmt.Sprintf("%s has not %s characters", shown, fe.Param()), "exactly " + fe.Param()
	case "datetime":
		return shown + " is no date", "write it like 2026-01-31"
	}
	return shown + " breaks the rule " + fe.Tag(), strings.TrimSpace(fe.Tag() + " " + fe.Param())
}

func show(v any) string {
	switch v := v.(type) {
	case string:
		return appraisal.Quoted(v)
	case appraisal.Money:
		return fmt.Sprintf("%.2f", float64(v)/100)
	}
	return fmt.Sprint(v)
}

// texts refuses blank texts and control characters that came in by escapes.
func (c *checker) texts(path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			c.texts(path, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			c.texts(appraisal.Join(path, yamlName(v.Type().Field(i))), v.Field(i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			c.text(appraisal.Join(path, k.String()), k.String())
			c.texts(appraisal.Join(path, k.String()), v.MapIndex(k))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			c.texts(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.String:
		c.text(path, v.String())
	}
}

func (c *checker) text(path, s string) {
	if s != "" && strings.TrimSpace(s) == "" {
		c.say(path, "holds only blanks", "write it or leave the key out")
	}
	for _, r := range s {
		if r != '\n' && unprintable(r) || r == utf8.RuneError {
			c.say(path, fmt.Sprintf("holds the control character %U", r), "plain text")
			return
		}
	}
}
