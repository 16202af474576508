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

	"asfound/rubrics/say"
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
func broken(fe validator.FieldError) (what, right say.Text) {
	shown := show(fe.Value())
	size := func(right say.Text) (say.Text, say.Text) {
		switch fe.Kind() {
		case reflect.String:
			return say.Later("has %d characters", utf8.RuneCountInString(fe.Value().(string))), right
		case reflect.Slice, reflect.Map:
			return say.Later("has %d entries", reflect.ValueOf(fe.Value()).Len()), right
		}
		return say.Later("%s is out of range", shown), right
	}
	switch fe.Tag() {
	case "required":
		return say.ByKey(appraisal.IsMissing), say.Later("write it")
	case "required_if":
		key, value, _ := strings.Cut(fe.Param(), " ")
		return say.ByKey(appraisal.IsMissing), say.Later("needed where %s is %s", strings.ToLower(key), value)
	case "slug":
		return say.Later("%s is no id", shown), say.Later("small letters, digits and single hyphens, like lift-cable")
	case "ne":
		return say.Later("%s is a reserved word", shown), say.Later("choose another id")
	case "oneof":
		return say.Later("%s is not known", shown), say.Later("one of %s", strings.Join(strings.Fields(fe.Param()), ", "))
	case "min", "gte":
		return size(say.Later("at least %s", fe.Param()))
	case "max", "lte":
		return size(say.Later("at most %s", fe.Param()))
	case "gt":
		return size(say.Later("more than %s", fe.Param()))
	case "lt":
		return size(say.Later("less than %s", fe.Param()))
	case "gtefield":
		return say.Later("%s is less than %s", shown, strings.ToLower(fe.Param())), say.Later("low, likely, high must not fall")
	case "len":
		return say.Later("%s has not %s characters", shown, fe.Param()), say.Later("exactly %s", fe.Param())
	case "datetime":
		return say.Later("%s is no date", shown), say.Later("write it like 2026-01-31")
	}
	return say.Later("%s breaks the rule %s", shown, fe.Tag()), say.Plain(strings.TrimSpace(fe.Tag() + " " + fe.Param()))
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
			c.say(path, say.Later("holds the control character %U", r), "plain text")
			return
		}
	}
}
