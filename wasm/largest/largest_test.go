package largest_test

import (
	"bytes"
	"testing"

	"example.org/barrow/wasm/answer"
	"example.org/barrow/wasm/largest"
)

// TestAccepted: every one of the largest jobs is planned, before and after changes at
// the yard: one that is refused would measure nothing.
func TestAccepted(t *testing.T) {
	for _, j := range largest.Jobs() {
		for _, job := range [][]byte{j.Text(), j.After()} {
			var s answer.Session
			if out := s.Answer("plan", job); !bytes.Contains(out, []byte(`"needs"`)) {
				t.Errorf("%s: %.400s", j.Name, out)
			}
		}
	}
}
