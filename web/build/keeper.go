package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"example.org/barrow/web/policy"
)

// keeper makes the service worker's script: it carries the list of files to
// keep, each with its hash, and a version that changes when any of them does.
// It comes last, when everything else is made.
func keeper(source string, made files) ([]byte, error) {
	list := map[string]string{}
	all := sha256.New()
	for _, name := range made.visited() {
		hash := policy.Hash(made[name])
		fmt.Fprintf(all, "%s %s\n", name, hash)
		if name == "index.html" {
			name = "./" // as hosts serve it, with no redirect
		}
		list[name] = hash
	}
	text, err := json.Marshal(list) // in order of name
	if err != nil {
		return nil, err
	}
	return bundle(source, "", map[string]string{
		"BARROW_FILES":   string(text),
		"BARROW_VERSION": `"` + hex.EncodeToString(all.Sum(nil)[:8]) + `"`,
	})
}
