package main

import (
	"encoding/json"
	"regexp"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/web/policy"
)

var (
	keptList    = regexp.MustCompile(`\{(?:"?[^"{},:]+"?:"sha256-[^"]{44}",?)+\}`)
	keptVersion = regexp.MustCompile("[\"'`]([0-9a-f]{16})[\"'`]")
)

// kept reads the list of files back from the service worker's script.
func kept(t *testing.T, made files) (list map[string]string, version string) {
	t.Helper()
	script := string(made["sw.js"])
	text := keptList.FindString(script)
	text = regexp.MustCompile(`([{,])(\w+):`).ReplaceAllString(text, `$1"$2":`)
	if err := json.Unmarshal([]byte(text), &list); err != nil {
		t.Fatalf("no list of files in sw.js: %v\n%s", err, script)
	}
	found := keptVersion.FindStringSubmatch(script)
	if found == nil {
		t.Fatalf("no version in sw.js\n%s", script)
	}
	return list, found[1]
}

// TestKeptList: what works without a network is all that a visit downloads,
// each file with its hash.
func TestKeptList(t *testing.T) {
	made := built(t)
	got, _ := kept(t, made)
	want := map[string]string{}
	for name, data := range made {
		switch name {
		case "index.html":
			want["./"] = policy.Hash(data)
		case "sw.js", "barrow.html", "licences.txt":
		default:
			want[name] = policy.Hash(data)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("files kept differ from files built (-built +kept)\n%s", diff)
	}
}

// TestVersion: a change of any file that is kept is a new version; a change of
// the single file is none.
func TestVersion(t *testing.T) {
	t.Parallel()
	made := built(t)
	delete(made, "sw.js") // not part of itself
	source := mustSource(t) + "/sw.js"
	_, first := kept(t, built(t))
	if len(made) < 6 {
		t.Fatalf("only %d files are built", len(made))
	}
	for _, name := range made.names() {
		old := made[name]
		made[name] = append(slices.Clip(old), ' ')
		script, err := keeper(source, made)
		if err != nil {
			t.Fatal(err)
		}
		made[name] = old
		_, now := kept(t, files{"sw.js": script})
		if same := now == first; same != slices.Contains(besides, name) {
			t.Errorf("%s changed: version %s, was %s", name, now, first)
		}
	}
}

func mustSource(t *testing.T) string {
	t.Helper()
	source, err := sourceDir()
	if err != nil {
		t.Fatal(err)
	}
	return source
}
