package main

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"asfound/rubrics"
)

// rubricVersions lists every version of a rubric that was ever given out, with
// the hash of its content: an appraisal names its rubric by id and version, so
// what a version says must never change.
const rubricVersions = "testdata/rubric-versions.txt"

// rubricLines gives "id version hash" of every rubric the program carries.
func rubricLines() ([]string, error) {
	all, err := rubrics.All()
	if err != nil {
		return nil, err
	}
	lines := make([]string, len(all))
	for i := range all {
		text, err := json.Marshal(all[i])
		if err != nil {
			return nil, err
		}
		lines[i] = fmt.Sprintf("%s %d %x", all[i].ID, all[i].Version, sha256.Sum256(text))
	}
	return lines, nil
}

// noteRubricVersions adds the versions that are not noted yet. One that is noted
// with another content is refused: it needs the next version number.
func noteRubricVersions() error {
	lines, err := rubricLines()
	if err != nil {
		return err
	}
	src, err := os.ReadFile(rubricVersions)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	added, err := addVersions(string(src), lines)
	if err != nil {
		return err
	}
	return os.WriteFile(rubricVersions, []byte(added), 0o644)
}

// addVersions appends the lines whose id and version are new to the noted ones.
func addVersions(noted string, lines []string) (string, error) {
	known := map[string]string{}
	for _, line := range strings.Split(noted, "\n") {
		if id, version, hash, ok := cutVersion(line); ok {
			known[id+" "+version] = hash
		}
	}
	for _, line := range lines {
		id, version, hash, _ := cutVersion(line)
		switch was, ok := known[id+" "+version]; {
		case !ok:
			noted += line + "\n"
		case was != hash:
			return "", fmt.Errorf("%s version %s says something else than the %s version %s given out before: raise its version", id, version, id, version)
		}
	}
	return noted, nil
}

func cutVersion(line string) (id, version, hash string, ok bool) {
	fields := strings.Fields(line)
	if len(fields) != 3 {
		return "", "", "", false
	}
	return fields[0], fields[1], fields[2], true
}
