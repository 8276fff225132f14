package main

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"html"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	parse "golang.org/x/net/html"

	"example.org/barrow/web/policy"
)

// element is one script, style, link or meta of a page, as a browser sees it.
type element struct {
	parse.Token
	text string
}

// elements reads a page the way a browser does.
func elements(t *testing.T, page []byte) (list []element) {
	t.Helper()
	doc, err := parse.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	for n := range doc.Descendants() {
		if n.Type != parse.ElementNode {
			continue
		}
		e := element{Token: parse.Token{Data: n.Data, Attr: n.Attr}}
		if n.FirstChild != nil && n.FirstChild.Type == parse.TextNode {
			e.text = n.FirstChild.Data
		}
		list = append(list, e)
	}
	return list
}

// TestSinglePolicy: the single file runs the scripts and styles that its policy
// names by hash, the policy names no other, and nothing is fetched.
func TestSinglePolicy(t *testing.T) {
	var scripts, styles, policies []string
	for _, e := range elements(t, built(t)["barrow.html"]) {
		kind := attr(e.Token, "type")
		switch {
		case e.Data == "script" && (kind == "" || kind == "module"):
			scripts = append(scripts, e.text)
		case e.Data == "style":
			styles = append(styles, e.text)
		case e.Data == "meta" && attr(e.Token, "http-equiv") != "":
			policies = append(policies, attr(e.Token, "content"))
		}
		for _, a := range e.Attr {
			if strings.HasPrefix(a.Key, "on") || a.Key == "style" || a.Key == "src" ||
				a.Key == "href" && !strings.HasPrefix(a.Val, "data:image/") {
				t.Errorf("<%s %s=%.60q>", e.Data, a.Key, a.Val)
			}
		}
	}
	if len(scripts) != 2 || len(styles) != 1 {
		t.Errorf("%d scripts and %d styles, want 2 and 1", len(scripts), len(styles))
	}
	if diff := cmp.Diff([]string{policy.Single(scripts, styles)}, policies); diff != "" {
		t.Errorf("policy (-of what is in it +stated)\n%s", diff)
	}
}

// TestSingleParts: the single file carries the same program and texts as the
// folder.
func TestSingleParts(t *testing.T) {
	made := built(t)
	found := 0
	for _, e := range elements(t, made["barrow.html"]) {
		id := attr(e.Token, "id")
		language, isText := strings.CutPrefix(id, "barrow-text-")
		switch {
		case id == "barrow-wasm":
			z, err := gzip.NewReader(base64.NewDecoder(base64.StdEncoding, strings.NewReader(e.text)))
			if err != nil {
				t.Fatal(err)
			}
			program, err := io.ReadAll(z)
			if err != nil || !bytes.Equal(program, made["barrow.wasm"]) {
				t.Errorf("the program inside is another: %v", err)
			}
			found++
		case isText:
			var got, want any
			if err := json.Unmarshal([]byte(e.text), &got); err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(made["text/"+language+".json"], &want); err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s differs\n%s", id, diff)
			}
			found++
		}
	}
	want := 1
	for name := range made {
		if strings.HasPrefix(name, "text/") {
			want++
		}
	}
	if found != want || want < 2 {
		t.Errorf("%d parts inside, want %d", found, want)
	}
}

// TestSingleTricks: what could end a script early, or a text that looks like a
// tag, does not get out of its element.
func TestSingleTricks(t *testing.T) {
	source := []byte(head + `<link rel="stylesheet" href="style.css">` +
		`<script type="module" src="main.js"></script><body></body>`)
	made := files{"style.css": []byte("p{}"), "main.js": []byte("1"), "worker.js": []byte("2"),
		"barrow.wasm":  []byte("3"),
		"text/es.json": []byte(`{"page": {"a": "</script><img src=x>"}}`)}
	got, err := single(source, made)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range elements(t, got) {
		if e.Data == "img" {
			t.Errorf("a text became a tag\n%s", got)
		}
	}
	for _, bad := range []string{`"</script>"`, `"<!-- <script>"`, "a\r\nb", `"</SCRIPT"`} {
		for _, name := range []string{"main.js", "worker.js", "style.css"} {
			worse := files{}
			for n, data := range made {
				worse[n] = data
			}
			worse[name] = []byte(bad)
			if _, err := single(source, worse); err == nil {
				t.Errorf("%s may be %q", name, bad)
			}
		}
	}
}

// TestPolicyHosts: no policy lets anything in from elsewhere or run code that
// is text.
func TestPolicyHosts(t *testing.T) {
	known := []string{"'none'", "'self'", "'wasm-unsafe-eval'", "data:", "blob:"}
	for _, p := range []string{policy.Page(), policy.Served(),
		html.UnescapeString(policy.Single([]string{"1"}, []string{"2"}))} {
		if !strings.HasPrefix(p, "default-src 'none'; ") {
			t.Errorf("starts otherwise: %s", p)
		}
		for directive := range strings.SplitSeq(p, "; ") {
			words := strings.Fields(directive)
			for _, source := range words[1:] {
				hash := regexp.MustCompile(`^'sha256-[A-Za-z0-9+/]{43}='$`).MatchString(source)
				if !hash && !slices.Contains(known, source) {
					t.Errorf("%s: %s", words[0], source)
				}
				if (words[0] == "script-src" || words[0] == "style-src") && strings.HasSuffix(source, ":") {
					t.Errorf("%s: %s", words[0], source)
				}
			}
		}
	}
}
