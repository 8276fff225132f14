// Package test has what the page's Go tests share. The tests of the page's modules
// are beside it.
package test

import (
	"os"
	"os/exec"
	"testing"
)

// Node finds node, or skips the test where it is not installed. On CI it must be
// there.
func Node(t testing.TB) string {
	t.Helper()
	node, err := exec.LookPath("node")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("node is not installed; on CI it must be")
		}
		t.Skip("node is not installed")
	}
	return node
}
