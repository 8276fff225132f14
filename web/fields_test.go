package web_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
)

// TestFields: the form knows every object and field of the job document, and
// none besides, and offers every word that a field takes.
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
		import {objects} from './fields.js';
		const words = row => (row.choices ?? []).map(c => c[0]);
		console.log(JSON.stringify(Object.values(objects).map(o => ({Of: o.of, Fields: o.fields.map(f => ({Name: f.name, Words: words(f)}))}))));`, nil, &got)
	names := map[string][]string{}
	for _, o := range got {
		for _, f := range o.Fields {
			names[o.Of] = append(names[o.Of], f.Name)
			for _, word := range f.Words {
				if code := refused(o.Of, f.Name, word); code != "" {
					t.Errorf("%s, %s: the form offers %q, which the library refuses: %s", o.Of, f.Name, word, code)
				}
			}
		}
	}
	want := map[string][]string{}
	for _, o := range mix.Fields() {
		for _, f := range o.Fields {
			want[o.Name] = append(want[o.Name], f.Name)
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

// refused is the code with which the library refuses a word of a choice.
func refused(object, field, word string) string {
	job := wordJobs[object]
	if job == "" {
		return "no job to try it in"
	}
	_, err := mix.Decode([]byte(strings.NewReplacer("FIELD", field, "WORD", word).Replace(job)))
	for _, p := range mix.Problems(err) {
		if p.Code != "field.missing" {
			return p.Path + " " + p.Code
		}
	}
	return ""
}
