package main

import (
	"bufio"
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"example.org/barrow/web/policy"
)

// visit runs a server as a person does: starts it, opens the address that it
// prints, and ends it.
func visit(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: visit N barrow args...")
	}
	program := ""
	for _, dir := range filepath.SplitList(ts.Getenv("PATH")) {
		if info, err := os.Stat(filepath.Join(dir, args[1])); err == nil && info.Mode().IsRegular() {
			program = filepath.Join(dir, args[1])
			break
		}
	}
	cmd := exec.Command(program, args[2:]...)
	cmd.Dir = ts.MkAbs(".")
	cmd.Env = []string{"PATH=" + ts.Getenv("PATH"), "HOME=" + ts.Getenv("HOME"), "TMPDIR=" + ts.Getenv("TMPDIR")}
	var wrong strings.Builder
	cmd.Stderr = &wrong
	out, err := cmd.StdoutPipe()
	ts.Check(err)
	ts.Check(cmd.Start())
	late := time.AfterFunc(time.Minute, func() { cmd.Process.Kill() })
	defer late.Stop()
	said, address := "", ""
	lines := bufio.NewReader(out)
	for address == "" {
		line, err := lines.ReadString('\n')
		said += line
		address = regexp.MustCompile(`http://[^ ]+`).FindString(line)
		if err != nil {
			cmd.Wait()
			ts.Fatalf("no address in %q; %s", said, wrong.String())
		}
	}
	reply, err := http.Get(address)
	ts.Check(err)
	got, err := io.ReadAll(reply.Body)
	reply.Body.Close()
	ts.Check(err)
	ts.Check(cmd.Process.Signal(os.Interrupt))
	rest, err := io.ReadAll(lines)
	ts.Check(err)
	cmd.Wait()
	if status := strconv.Itoa(cmd.ProcessState.ExitCode()); status != args[0] || wrong.Len() > 0 {
		ts.Fatalf("exit status %s, want %s; %s", status, args[0], wrong.String())
	}
	ts.Check(os.WriteFile(ts.MkAbs("said"), []byte(said+string(rest)), 0o666))
	ts.Check(os.WriteFile(ts.MkAbs("got"), got, 0o666))
}

// page writes a small folder that looks built, with a file beside it that must
// stay out of reach.
func page(t *testing.T) string {
	t.Helper()
	top := t.TempDir()
	for name, text := range map[string]string{
		"secret.txt": "secret", "page/index.html": "<!doctype html>", "page/barrow.html": "<!doctype html>one", "page/barrow.wasm": "\x00asm",
		"page/text/es.json": "{}", "page/manifest.webmanifest": "{}", "page/.hidden": "secret", "page/text/.git/config": "secret", "page/odd.bin": "1",
	} {
		path := filepath.Join(top, filepath.FromSlash(name))
		must(t, os.MkdirAll(filepath.Dir(path), 0o777))
		must(t, os.WriteFile(path, []byte(text), 0o666))
	}
	must(t, os.Symlink(filepath.Join(top, "secret.txt"), filepath.Join(top, "page", "link.txt")))
	return filepath.Join(top, "page")
}

// ask sends one request to a host, its target as it is.
func ask(h host, method, target string, head http.Header) *http.Response {
	r := httptest.NewRequest(method, "http://127.0.0.1:9273/", nil)
	if before, after, ok := strings.Cut(target, "|"); ok {
		r.Host, target = before, after
	}
	r.URL.Path = target
	for k, v := range head {
		r.Header[k] = v
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

// TestHost checks that files of the folder are served under their types, and
// nothing else is.
func TestHost(t *testing.T) {
	h := host{page(t)}
	for _, test := range []struct {
		target string
		status int
		kind   string
	}{
		{"/", 200, "text/html; charset=utf-8"},
		{"/index.html", 200, "text/html; charset=utf-8"},
		{"/barrow.wasm", 200, "application/wasm"},
		{"/text/es.json", 200, "application/json"},
		{"/manifest.webmanifest", 200, "application/manifest+json"},
		{"/odd.bin", 200, "application/octet-stream"},
		{"localhost:1|/", 200, "text/html; charset=utf-8"},
		{"localhost|/", 200, "text/html; charset=utf-8"},
		{"[::1]:9273|/", 200, "text/html; charset=utf-8"},
		{"[::1]|/", 200, "text/html; charset=utf-8"},
		{"/gone.js", 404, ""},
		{"/text", 404, ""},
		{"/text/", 404, ""},
		{"//", 404, ""},
		{"/../secret.txt", 404, ""},
		{"/text/../../secret.txt", 404, ""},
		{"/./index.html", 404, ""},
		{"/link.txt", 404, ""},
		{"/.hidden", 404, ""},
		{"/text/.git/config", 404, ""},
		{"/index.html\x00", 404, ""},
		{`/..\secret.txt`, 404, ""},
		{"barrow.invalid:9273|/", 421, ""},
		{"127.0.0.1.barrow.invalid|/", 421, ""},
		{"192.0.2.1:9273|/", 421, ""},
		{"|/", 421, ""},
	} {
		got := ask(h, "GET", test.target, nil)
		body, _ := io.ReadAll(got.Body)
		if got.StatusCode != test.status || test.kind != "" && got.Header.Get("Content-Type") != test.kind {
			t.Errorf("GET %q: %d %s, want %d %s",
				test.target, got.StatusCode, got.Header.Get("Content-Type"), test.status, test.kind)
		}
		if strings.Contains(string(body), "secret") || strings.Contains(string(body), "es.json") {
			t.Errorf("GET %q: %s", test.target, body)
		}
		head := got.Header
		if head.Get("X-Content-Type-Options") != "nosniff" || head.Get("Referrer-Policy") != "no-referrer" ||
			head.Get("Cross-Origin-Opener-Policy") != "same-origin" ||
			head.Get("Cache-Control") != "no-cache" && got.StatusCode == 200 {
			t.Errorf("GET %q: %v", test.target, got.Header)
		}
		if p := got.Header.Get("Content-Security-Policy"); p != policy.Served() {
			t.Errorf("GET %q: policy %s", test.target, p)
		}
	}
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS"} {
		if got := ask(h, method, "/", nil); got.StatusCode != 405 || got.Header.Get("Allow") != "GET, HEAD" {
			t.Errorf("%s: %d", method, got.StatusCode)
		}
	}
	if got := ask(h, "GET", "/barrow.html", nil).Header.Get("Content-Security-Policy"); got != policy.Framed() {
		t.Errorf("the single file has a policy of its own, and is served with %s", got)
	}
}

// TestHostServesFiles checks that what is in the folder and is no file is as good as
// missing: a request must not wait for somebody to write into a pipe.
func TestHostServesFiles(t *testing.T) {
	h := host{page(t)}
	if mkfifo, err := exec.LookPath("mkfifo"); err == nil {
		must(t, exec.Command(mkfifo, filepath.Join(h.dir, "pipe.js")).Run())
	}
	socket, err := net.Listen("unix", filepath.Join(h.dir, "socket.js"))
	must(t, err)
	defer socket.Close()
	must(t, os.Symlink("/dev/zero", filepath.Join(h.dir, "zero.js")))
	must(t, os.Mkdir(filepath.Join(h.dir, "folder.js"), 0o777))
	for _, name := range []string{"pipe.js", "socket.js", "zero.js", "folder.js"} {
		status := make(chan int, 1)
		go func() { status <- ask(h, "GET", "/"+name, nil).StatusCode }()
		select {
		case got := <-status:
			if got != 404 {
				t.Errorf("GET /%s: %d, want 404", name, got)
			}
		case <-time.After(10 * time.Second):
			t.Errorf("GET /%s: no answer", name)
		}
	}
}

// TestHostUpdates checks that what has not changed is not sent again, and what
// has changed is.
func TestHostUpdates(t *testing.T) {
	h := host{page(t)}
	first := ask(h, "GET", "/index.html", nil)
	seen := http.Header{"If-None-Match": {first.Header.Get("Etag")}}
	if got := ask(h, "GET", "/index.html", seen); got.StatusCode != 304 {
		t.Errorf("unchanged: %d, want 304", got.StatusCode)
	}
	const length = int64(len("<!doctype html>"))
	if got := ask(h, "HEAD", "/index.html", nil); got.StatusCode != 200 || got.ContentLength != length {
		t.Errorf("HEAD: %d, %d bytes", got.StatusCode, got.ContentLength)
	}
	must(t, os.WriteFile(filepath.Join(h.dir, "index.html"), []byte("<!doctype html>newer"), 0o666))
	got := ask(h, "GET", "/index.html", seen)
	if body, _ := io.ReadAll(got.Body); got.StatusCode != 200 || !strings.HasSuffix(string(body), "newer") {
		t.Errorf("changed: %d %s", got.StatusCode, body)
	}
	// A build replaces the folder itself.
	must(t, os.Rename(h.dir, h.dir+".old"))
	must(t, os.Mkdir(h.dir, 0o777))
	must(t, os.WriteFile(filepath.Join(h.dir, "index.html"), []byte("built again"), 0o666))
	if body, _ := io.ReadAll(ask(h, "GET", "/", nil).Body); string(body) != "built again" {
		t.Errorf("the folder was replaced, and yet %q", body)
	}
}

// TestListen checks that only this machine is listened to, that another port is
// used when the usual one is taken, and that a port that was asked for is used
// or refused.
func TestListen(t *testing.T) {
	first, err := listen(0, true)
	must(t, err)
	defer first.Close()
	at := first.Addr().(*net.TCPAddr)
	if !at.IP.IsLoopback() {
		t.Errorf("listens at %v", at)
	}
	if l, err := listen(uint16(at.Port), true); err == nil {
		l.Close()
		t.Error("a port that is taken was given again")
	} else if !strings.Contains(err.Error(), "--port") {
		t.Errorf("listen: %v", err)
	}
	second, err := listen(uint16(at.Port), false)
	must(t, err)
	defer second.Close()
	if got := second.Addr().(*net.TCPAddr); got.Port == at.Port || !got.IP.IsLoopback() {
		t.Errorf("listens at %v, and %v was taken", got, at)
	}
}

// TestServeBuilds checks that in a clone with nothing built the page is built
// for the time it is served, and removed afterwards.
func TestServeBuilds(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("builds the page")
	}
	a := &app{out: io.Discard, err: io.Discard}
	dir, done, err := a.pageFolder(context.Background(), "")
	must(t, err)
	if !hasPage(dir) {
		t.Errorf("no page in %s", dir)
	}
	done()
	if _, err := os.Stat(dir); err == nil {
		t.Errorf("%s is left behind", dir)
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	if _, _, err := a.pageFolder(ended, ""); err == nil {
		t.Error("built although ended")
	}
}

// TestServeEnds checks that a browser that keeps a connection open does not
// delay the end.
func TestServeEnds(t *testing.T) {
	l, err := listen(0, true)
	must(t, err)
	ctx, cancel := context.WithCancel(context.Background())
	dir := page(t)
	ended := make(chan error, 1)
	go func() { ended <- (&app{out: io.Discard}).serve(ctx, l, dir) }()
	conn, err := net.Dial("tcp", l.Addr().String())
	must(t, err)
	defer conn.Close()
	_, err = io.WriteString(conn, "GET /barrow.wasm HTTP/1.1\r\nHost: localhost\r\n\r\n")
	must(t, err)
	if line, err := bufio.NewReader(conn).ReadString('\n'); err != nil || line != "HTTP/1.1 200 OK\r\n" {
		t.Fatalf("%q, %v", line, err)
	}
	cancel()
	select {
	case err := <-ended:
		must(t, err)
	case <-time.After(20 * time.Second):
		t.Fatal("does not end")
	}
}
