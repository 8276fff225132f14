// Package e2e_test runs the page's tests in real browsers from go test: each
// engine, and the single file. npm test has the journeys and the rules of
// access besides.
package e2e_test

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// needed are the programs that the tests drive, as Debian has them.
var needed = []string{"node", "chromium", "firefox-esr", "WebKitWebDriver", "Xvfb"}

// TestEngines opens the built page in Chromium, Firefox and WebKit.
func TestEngines(t *testing.T) {
	if testing.Short() {
		t.Skip("three browsers take a minute")
	}
	if missing := missing(); len(missing) > 0 {
		if os.Getenv("CI") == "true" {
			t.Fatalf("missing: %s; on CI they must be there", strings.Join(missing, ", "))
		}
		t.Skipf("missing: %s", strings.Join(missing, ", "))
	}
	dist := t.TempDir()
	build := exec.Command("go", "run", "example.org/barrow/web/build", "-out", dist, "-quiet")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("web/build: %v\n%s", err, out)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 8*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, "node", "--test", "--test-concurrency=1", "engines.test.mjs", "singlefile.test.mjs")
	cmd.Env = append(os.Environ(), "BARROW_DIST="+dist)
	cmd.Cancel = func() error { return cmd.Process.Signal(os.Interrupt) } // it ends its browsers
	cmd.WaitDelay = 20 * time.Second
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("node --test: %v\n%s", err, out)
	}
	t.Logf("%s", closing(string(out)))
}

// missing says what the tests need and this machine has not.
func missing() []string {
	var list []string
	for _, name := range needed {
		if _, err := exec.LookPath(name); err != nil {
			list = append(list, name)
		}
	}
	if _, err := os.Stat(filepath.Join("node_modules", "puppeteer-core")); err != nil {
		list = append(list, "node_modules (npm ci in web/e2e)")
	}
	return list
}

// closing is what node counted.
func closing(out string) string {
	if at := strings.LastIndex(out, "\n# tests "); at >= 0 {
		return out[at+1:]
	}
	return out
}
