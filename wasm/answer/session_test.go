package answer_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/report"
	"example.org/barrow/wasm/answer"
)

// TestPlanIsTheLibrarys checks that a session answers every sample job as the
// library does, in whatever order it is asked.
func TestPlanIsTheLibrarys(t *testing.T) {
	var session answer.Session
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range append(files, files...) {
		job, err := os.ReadFile(f)
		require.NoError(t, err)
		want := report.Handle(job)
		require.Equal(t, string(want), string(session.Answer("plan", job)), f)
		p, err := mix.PlanDocument(job)
		if err != nil {
			require.Equal(t, string(want), string(session.Answer("csv", job)), f)
			continue
		}
		require.Equal(t, string(report.Full(p)), string(session.Answer("full", job)), f)
		require.Equal(t, string(report.CSV(p)), string(session.Answer("csv", job)), f)
	}
}

// TestSessionKeepsNoHold checks that a session notices when its caller
// overwrites a document that it has answered.
func TestSessionKeepsNoHold(t *testing.T) {
	var session answer.Session
	job := mix.Sample()
	first := string(session.Answer("plan", job))
	copy(job, strings.Repeat(" ", len(job)))
	require.Contains(t, string(session.Answer("plan", job)), `"problems"`)
	require.Equal(t, first, string(session.Answer("plan", mix.Sample())))
}

// TestChanges checks that what is sold out is gone from the order, that what
// replaces it is named, and that both bills are there.
func TestChanges(t *testing.T) {
	var session answer.Session
	now := strings.Replace(string(mix.Sample()), `"schema": 1,`,
		`"schema": 1, "yard": {"without": ["bark-fines:1/2 cu yd bulk"]},`, 1)
	var got struct {
		Changes []struct {
			Material, Pack, Bulk, Is string
			Before, After            int
		}
		Before, After struct{ Total string }
	}
	require.NoError(t, json.Unmarshal(session.Answer("changes", mix.Sample(), []byte(now)), &got))
	seen := map[string]string{}
	for _, c := range got.Changes {
		seen[c.Material+" "+c.Pack+c.Bulk] = c.Is
	}
	require.Equal(t, "gone", seen["bark-fines 1/2 cu yd"])
	require.Equal(t, "more", seen["bark-fines 2 cu ft"])
	require.Equal(t, "same", seen["peat 3.8 cu ft"])
	require.Equal(t, "270.65", got.Before.Total)
	require.NotEqual(t, got.Before.Total, got.After.Total)
}

// TestEveryVerbAnswersJSON checks that every answer is a document, whatever a
// page sends, and that an unknown verb is reported.
func TestEveryVerbAnswersJSON(t *testing.T) {
	var session answer.Session
	for _, verb := range []string{"plan", "full", "changes", "catalog", "sample", "", "what"} {
		for _, docs := range [][][]byte{nil, {nil}, {[]byte("{"), []byte("[")}, {mix.Sample()}} {
			out := session.Answer(verb, docs...)
			require.True(t, json.Valid(out), "%s: %s", verb, out)
		}
	}
	require.Contains(t, string(session.Answer("what")), "verb.unknown")
}

// TestLanguage checks that after a language is set every answer is in it, the
// last job is worked out again, and the decimal mark is independent of it.
func TestLanguage(t *testing.T) {
	file, err := os.ReadFile("../../web/text/es.json")
	require.NoError(t, err)
	var session answer.Session
	english := string(session.Answer("plan", mix.Sample()))
	require.Equal(t, "{}\n", string(session.Answer("language", file)))
	spanish := string(session.Answer("plan", mix.Sample()))
	require.NotEqual(t, english, spanish)
	require.Contains(t, spanish, `"shown": "3.42 `)
	require.Equal(t, "{}\n", string(session.Answer("language", nil, []byte(","))))
	require.Contains(t, string(session.Answer("plan", mix.Sample())), `"shown": "3,42 cu ft"`)
	require.Contains(t, string(session.Answer("language", []byte("{"))), "language.bad")
	session.Answer("language", file)
	failed := string(session.Failed())
	require.Contains(t, failed, "avise")
	require.Contains(t, failed, `"code": "bug"`)
	require.Equal(t, spanish, string(session.Answer("plan", mix.Sample())), "a failure costs the language")
	session.Answer("language")
	require.Equal(t, english, string(session.Answer("plan", mix.Sample())))
}
