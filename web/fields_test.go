package web_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
	"example.org/barrow/mix/report"
)

// TestFields: the form knows every object and field of the job document, and
// none besides, and offers the words that a field takes.
func TestFields(t *testing.T) {
	type field struct {
		Name  string
		Words []string
	}
	type object struct {
		Of     string
		Fields []field
	}
	var got []object
	callNode(t, `
		import {objects} from './state/fields.js';
		const words = row => (row.choices ?? []).map(c => c[0]);
		console.log(JSON.stringify(Object.values(objects).map(o => ({Of: o.of, Fields: o.fields.map(f => ({Name: f.name, Words: words(f)}))}))));`, nil, &got)
	names := map[string][]string{}
	for _, o := range got {
		for _, f := range o.Fields {
			names[o.Of] = append(names[o.Of], f.Name)
			if len(f.Words) == 0 {
				continue
			}
			if takes := wordsOf(o.Of, f.Name); !slices.Equal(takes, f.Words) {
				t.Errorf("%s, %s: the form offers %q, the library takes %q", o.Of, f.Name, f.Words, takes)
			}
		}
	}
	want := map[string][]string{}
	for _, o := range mix.Objects() {
		for _, f := range o.Fields() {
			want[o.Title()] = append(want[o.Title()], f.Name)
		}
	}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("fields (-library +form)\n%s", diff)
	}
}

// wordJobs have a field of a choice in them, with the word to come.
var wordJobs = map[string]string{
	"the job":                         `{"schema": 1, "tasks": [], "FIELD": "WORD"}`,
	"a task, of any kind":             `{"schema": 1, "tasks": [{"FIELD": "WORD"}]}`,
	"a container line of a fill task": `{"schema": 1, "tasks": [{"kind": "fill", "containers": [{"FIELD": "WORD"}]}]}`,
	"an amend task":                   `{"schema": 1, "tasks": [{"kind": "amend", "FIELD": "WORD"}]}`,
	"a backfill task":                 `{"schema": 1, "tasks": [{"kind": "backfill", "FIELD": "WORD"}]}`,
	"a strip":                         `{"schema": 1, "tasks": [{"kind": "cover", "area": {"strip": {"FIELD": "WORD"}}}]}`,
	"a material of your own":          `{"schema": 1, "materials": [{"id": "a", "FIELD": ["WORD"]}], "tasks": []}`,
}

// wordsOf are the words that the library takes for a field, as it lists them
// when it is given another.
func wordsOf(object, field string) []string {
	job := strings.NewReplacer("FIELD", field, "WORD", "no-such-word").Replace(wordJobs[object])
	_, err := mix.Decode([]byte(job))
	var found struct{ Problems []struct{ Code, Hint string } }
	if json.Unmarshal(report.Problems(err, nil), &found) != nil {
		return nil
	}
	for _, p := range found.Problems {
		if list, ok := strings.CutPrefix(p.Hint, "write "); ok && p.Code == "word.unknown" {
			return strings.Split(strings.Replace(list, " or ", ", ", 1), ", ")
		}
	}
	return nil
}
