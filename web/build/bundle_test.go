package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestBundle: one file comes out that imports nothing, and what is doubtful
// stops the build at its line.
func TestBundle(t *testing.T) {
	for _, test := range []struct {
		name, entry string
		text        map[string]string
		want, lacks string // of the result
		fault       string
	}{
		{"imports", "main.js", map[string]string{"main.js": "import {a} from './a.js';\nconsole.log(a);", "a.js": "export const a = 'from a'; export const unused = 'left out';"}, "from a", "left out", ""},
		{"loader", "main.js", map[string]string{"main.js": "import './wasm_exec.js';", "loader.js": "globalThis.Go = 'the loader';"}, "the loader", "import", ""},
		{"terms", "main.js", map[string]string{"main.js": "/*! Terms of use */ console.log(1); // a remark"}, "/*! Terms of use */", "a remark", ""},
		{"style", "style.css", map[string]string{"style.css": "@import './more.css';\nbody { color: red }", "more.css": "p { margin: 0 }"}, "p{margin:0}body{color:red}", "@import", ""},
		{"settings of folders above", "main.js", map[string]string{"main.js": "class A { b = 1 }; console.log(new A())", "tsconfig.json": "not JSON"}, "console.log", "", ""},
		{"missing", "main.js", map[string]string{"main.js": "\nimport './gone.js';"}, "", "", `main.js:2: Could not resolve "./gone.js"`},
		{"doubtful", "main.js", map[string]string{"main.js": "if (typeof a === 'strnig') console.log(1);"}, "", "", "main.js:1: "},
		{"wrong style", "style.css", map[string]string{"style.css": "p { margin 0 }"}, "", "", "style.css:1: Expected"},
		{"address in a style", "style.css", map[string]string{"style.css": "p { background: url(x.png) }"}, "", "", "x.png"},
	} {
		t.Run(test.name, func(t *testing.T) {
			dir := t.TempDir()
			for name, text := range test.text {
				if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			got, err := bundle(filepath.Join(dir, test.entry), filepath.Join(dir, "loader.js"), nil)
			if test.fault != "" {
				if err == nil || !strings.Contains(err.Error(), test.fault) {
					t.Errorf("bundle: %v, want %q", err, test.fault)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(string(got), test.want) ||
				test.lacks != "" && strings.Contains(string(got), test.lacks) {
				t.Errorf("got %s\nwant %q and no %q", got, test.want, test.lacks)
			}
			if strings.Contains(string(got), dir) {
				t.Errorf("the folder's name is in it: %s", got)
			}
		})
	}
}
