package lang_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/wasm/answer"
)

func spanishFile(t testing.TB) *lang.Language {
	t.Helper()
	data, err := os.ReadFile("../../web/text/es.json")
	if err != nil {
		t.Fatal(err)
	}
	es, err := lang.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	return es
}

// wide writes every letter of a form as its full-width sign. In that language,
// any plain letter is one that was not translated.
func wide(form string) string {
	return strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' {
			return r - 'A' + 'Ａ'
		}
		return r
	}, form)
}

// wideFile is the language file of that language.
func wideFile(t *testing.T) []byte {
	t.Helper()
	forms := map[string]string{}
	for form := range formsInUse(t) {
		forms[form] = wide(form)
	}
	for _, w := range figureWords() {
		forms[w] = wide(w)
	}
	data, err := json.Marshal(map[string]any{"language": "wide", "library": forms})
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// data are the keys of an answer whose text is data and not for people.
var data = []string{
	"material", "pack", "bulk", "bale", "code", "path", "value", "kind", "currency", "limit", "confidence", "id", "is",
	"class", "cheaper", "text-anchor", "d", "parts", "packs", "bales", // packs and bales as the catalogue sells them
}

// texts hands on every text for people of an answer, and its key.
func texts(key string, v any, each func(key, text string)) {
	switch v := v.(type) {
	case string:
		if !slices.Contains(data, key) {
			each(key, v)
		}
	case []any:
		for _, item := range v {
			texts(key, item, each)
		}
	case map[string]any:
		for k, item := range v {
			texts(k, item, each)
		}
	}
}

// typed lists the words that a job has itself: its names, ids and fields. Units
// are not among them, since a figure is written in the reader's own.
func typed(t *testing.T, job []byte) map[string]bool {
	t.Helper()
	mine := map[string]bool{}
	add := func(text string) {
		for _, w := range plainWords(text) {
			mine[w] = true
		}
	}
	add(string(job))
	for _, w := range figureWords() {
		for _, part := range plainWords(w) {
			delete(mine, part)
		}
	}
	for _, o := range mix.Objects() {
		for _, f := range o.Fields() {
			add(f.Name)
			add(f.Type.InWords()) // "us, metric or both"
		}
	}
	cat := catalog.BuiltIn()
	for _, m := range cat.Materials {
		add(m.ID)
	}
	for _, k := range cat.Containers {
		add(k.ID)
	}
	for _, m := range cat.Mixes {
		add(m.ID)
	}
	return mine
}

// ownSentences are the texts of a job that are no figures, such as names.
func ownSentences(job []byte) (list []string) {
	var doc any
	_ = json.Unmarshal(job, &doc) // a job that is no JSON has none
	texts("", doc, func(key, text string) {
		if (key == "name" || key == "source") && strings.Contains(text, " ") {
			list = append(list, text)
		}
	})
	return list
}

// plainWords are the runs of plain letters of a text.
func plainWords(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return !('a' <= r && r <= 'z' || 'A' <= r && r <= 'Z') })
}

// TestNothingIsEnglish checks everything that the library says about a job, in
// a plan, in a drawing or as a problem. Where the language has other words,
// nothing is in English except what the job itself wrote and the names of
// publications.
func TestNothingIsEnglish(t *testing.T) {
	var session answer.Session
	if out := string(session.Answer("language", wideFile(t))); out != "{}\n" {
		t.Fatal(out)
	}
	jobs := map[string][]byte{"the sample": mix.Sample()}
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no jobs", err)
	}
	for _, f := range files {
		if jobs[filepath.Base(f)], err = os.ReadFile(f); err != nil {
			t.Fatal(err)
		}
	}
	count := 0
	for name, job := range jobs {
		mine, sentences := typed(t, job), ownSentences(job)
		for _, verb := range []string{"plan", "full", "shown", "costs", "changes", "catalog", "no such verb"} {
			var got any
			if err := json.Unmarshal(session.Answer(verb, job, job), &got); err != nil {
				t.Fatal(err)
			}
			texts("", got, func(key, text string) {
				count++
				for _, own := range sentences {
					text = strings.ReplaceAll(text, own, "")
				}
				for _, w := range plainWords(text) {
					if w != "x" && !mine[w] && !strings.Contains(text, w+"…") {
						t.Errorf("%s, %s: %s has %q: %s", name, verb, key, w, text)
						return
					}
				}
			})
		}
	}
	if count < 1000 {
		t.Errorf("only %d texts were looked at", count)
	}
}
