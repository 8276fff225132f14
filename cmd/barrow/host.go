package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"io/fs"
	"net"
	"net/http"
	"os"
	"path"
	"strings"
	"time"

	"example.org/barrow/web/policy"
)

// host serves the files of a built folder to this machine and nothing else. It
// opens the folder again for every file, so that a newer build is served at
// once.
type host struct{ dir string }

// fileTypes are the content types of files. A browser compiles a program while
// it arrives only under its own type.
var fileTypes = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// ServeHTTP serves one file, with headers that keep the page apart from others.
func (h host) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	head := w.Header()
	head.Set("Content-Security-Policy", policy.Served())
	head.Set("Cross-Origin-Opener-Policy", "same-origin")
	head.Set("Cross-Origin-Resource-Policy", "same-origin")
	head.Set("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
	head.Set("Referrer-Policy", "no-referrer")
	head.Set("X-Content-Type-Options", "nosniff")
	head.Set("Cache-Control", "no-cache") // ask each time whether there is a newer one
	switch {
	case !local(r.Host):
		// Somebody else's name may point here; a page of theirs could read ours.
		http.Error(w, "this page is served to this machine alone, as 127.0.0.1 or localhost",
			http.StatusMisdirectedRequest)
		return
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		head.Set("Allow", "GET, HEAD")
		http.Error(w, "there is nothing here but files to read", http.StatusMethodNotAllowed)
		return
	}
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" {
		name = "index.html"
	}
	data, err := readInside(h.dir, name)
	if err != nil {
		http.Error(w, "no such file", http.StatusNotFound)
		return
	}
	kind, ok := fileTypes[path.Ext(name)]
	if !ok {
		kind = "application/octet-stream"
	}
	if name == "barrow.html" {
		head.Set("Content-Security-Policy", policy.Framed()) // the file contains its own
	}
	sum := sha256.Sum256(data)
	head.Set("Content-Type", kind)
	head.Set("Etag", `"`+base64.RawURLEncoding.EncodeToString(sum[:12])+`"`)
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(data))
}

// local reports whether a request was addressed to this machine by one of its
// own names. The port may be that of a tunnel.
func local(hostPort string) bool {
	name, _, err := net.SplitHostPort(hostPort)
	if err != nil {
		name = strings.Trim(hostPort, "[]")
	}
	ip := net.ParseIP(name)
	return strings.EqualFold(name, "localhost") || ip != nil && ip.IsLoopback()
}

// readInside reads a file in a folder. Names that lead out of the folder,
// hidden files and anything that is not a file count as missing.
func readInside(dir, name string) ([]byte, error) {
	if !fs.ValidPath(name) || strings.HasPrefix(name, ".") || strings.Contains(name, "/.") {
		return nil, fs.ErrNotExist
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	// Asked before it is opened: to open a pipe is to wait for somebody to write.
	if info, err := root.Stat(name); err != nil || !info.Mode().IsRegular() {
		return nil, fs.ErrNotExist
	}
	return root.ReadFile(name)
}
