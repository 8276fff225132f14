package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix/lang"
	"example.org/barrow/web/test"
)

// TestShort: the language file as it is downloaded says everything that its
// source says, to the program and to the page.
func TestShort(t *testing.T) {
	t.Parallel()
	source, err := os.ReadFile("../text/es.json")
	require.NoError(t, err)
	built, err := short(source)
	require.NoError(t, err)
	var file struct{ Page, Library map[string]string }
	require.NoError(t, json.Unmarshal(source, &file))
	require.Greater(t, len(file.Page), 100)
	require.Greater(t, len(file.Library), 100)

	es, err := lang.Parse(built)
	require.NoError(t, err)
	require.Equal(t, "es", es.Code())
	for english, text := range file.Library {
		require.Equal(t, text, es.Form(english))
	}
	require.Equal(t, "no such form", es.Form("no such form"))

	said := exec.Command(test.Node(t), "--input-type=module", "--eval", `
		import {readFileSync} from 'node:fs';
		import {say, setLanguage} from '../text/say.js';
		const {built, texts} = JSON.parse(readFileSync(0, 'utf8'));
		setLanguage(JSON.parse(built));
		console.log(JSON.stringify(Object.fromEntries([...texts, 'no such text'].map(text => [text, say(text)]))));`)
	var texts []string
	for english := range file.Page {
		texts = append(texts, english)
	}
	input, err := json.Marshal(map[string]any{"built": string(built), "texts": texts})
	require.NoError(t, err)
	said.Stdin = strings.NewReader(string(input))
	out, err := said.Output()
	require.NoError(t, err)
	var got map[string]string
	require.NoError(t, json.Unmarshal(out, &got))
	file.Page["no such text"] = "no such text"
	require.Equal(t, file.Page, got)
}

// TestShortRefuses: two texts that would be one in the download are no file.
func TestShortRefuses(t *testing.T) {
	for _, bad := range []string{
		"", `{"language": "es", "page": 1, "library": {}}`,
		`{"language": "es", "page": {"form 150": "a", "form 1091": "b"}, "library": {}}`,
		`{"language": "es", "page": {}, "library": {"form 150": "a", "form 1091": "b"}}`,
	} {
		_, err := short([]byte(bad))
		require.Error(t, err, bad)
	}
}
