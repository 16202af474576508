package door_test

import (
	"encoding/json"
	"testing"

	"asfound/rubrics/door"
)

// TestNoticeOverTheBorder: a text goes in, proposals come back with the kinds and
// facts of the rubrics that the door was opened with.
func TestNoticeOverTheBorder(t *testing.T) {
	d := open(t)
	ask := func(argument string) (door.Notice, string) {
		var r door.Reply
		if err := json.Unmarshal(d.Call("notice", []byte(argument)), &r); err != nil {
			t.Fatal(err)
		}
		var n door.Notice
		if r.Error == "" {
			if err := json.Unmarshal(r.Value, &n); err != nil {
				t.Fatal(err)
			}
		}
		return n, r.Error
	}
	n, why := ask(`{"text":"2 post car lift, 9000 lb, asymmetrical, taken down, 220v single phase. $2,400 obo","currency":"USD","units":"inch"}`)
	if why != "" {
		t.Fatal(why)
	}
	got := map[string]string{}
	for _, p := range n.Proposals {
		if got[p.Field] == "" {
			got[p.Field] = p.Words
		}
	}
	for field, words := range map[string]string{
		"rubric": "2 post", "asking": "$2,400", "capacity": "9000 lb", "voltage": "220v", "phases": "single phase",
		"fact/arms": "asymmetrical", "fact/standing": "taken down", "fact/supply": "single phase",
	} {
		if got[field] != words {
			t.Errorf("%s from %q, want %q", field, got[field], words)
		}
	}
	if n, why = ask(`{"text":"","currency":"USD","units":"metric"}`); why != "" || n.Proposals == nil || len(n.Proposals) != 0 {
		t.Errorf("nothing told: %+v, %q", n, why)
	}
	n, _ = ask(`{"text":"two post lift, warp drive","currency":"USD","units":"inch","rubric":"two-post-lift","own":[{"id":"two-post-lift","facts":[{"id":"drive","options":[{"id":"warp","title":"Warp drive"}]}]}]}`)
	if len(n.Proposals) != 2 || n.Proposals[1].Field != "fact/drive" {
		t.Errorf("a version of a rubric that the catalogue has not: %+v", n.Proposals)
	}
	if _, why = ask(`{"text":"lift","currency":"XXX","units":"inch"}`); why == "" {
		t.Error("a currency that is not kept was taken")
	}
}
