package main

import (
	"strings"
	"testing"

	"example.org/barrow/web/policy"
)

const head = `<!doctype html><meta charset="utf-8">`

// TestPage: what the policy would refuse, or what would come from elsewhere,
// fails the build.
func TestPage(t *testing.T) {
	made := files{"main.js": {'1'}, "style.css": {'1'}}
	for _, test := range []struct{ name, html, want string }{
		{"sound", head + `<script type="module" src="main.js"></script><link rel="stylesheet" href="style.css"><a href="#x">on</a>`, ""},
		{"script", head + `<script>1</script>`, "script written"},
		{"script in capitals", head + `<SCRIPT>1</SCRIPT>`, "script written"},
		{"style", head + `<style>p{}</style>`, "no place for <style>"},
		{"style attribute", head + `<p style="color:red">`, "style written"},
		{"handler", head + `<p onclick=go()>`, "code written"},
		{"handler in capitals", head + `<p OnClick=go()>`, "code written"},
		{"base", head + `<base href="#x">`, "no place for <base>"},
		{"elsewhere", head + `<img src="https://localhost/x.png">`, "not built"},
		{"script address", head + `<a href="javascript:go()">`, "not built"},
		{"missing", head + `<script src="gone.js"></script>`, `"gone.js"`},
		{"policy of its own", head + `<meta http-equiv="refresh" content="0">`, "the build puts"},
		{"no charset", `<p>`, "no <meta charset>"},
		{"two at once", head + `<p style="x"><script>1</script>`, "style written"},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := page([]byte(test.html), made)
			switch {
			case test.want == "" && err != nil:
				t.Fatal(err)
			case test.want == "":
				if !strings.Contains(string(got), policy.Page()) {
					t.Errorf("no policy in %s", got)
				}
			case err == nil || !strings.Contains(err.Error(), test.want):
				t.Errorf("page(%s): %v, want %q", test.html, err, test.want)
			}
		})
	}
}

// TestPagePolicy: the built page has the policy once, before anything that it
// governs.
func TestPagePolicy(t *testing.T) {
	html := string(built(t)["index.html"])
	at := strings.Index(html, policy.Page())
	if at < 0 || strings.Count(html, "Content-Security-Policy") != 1 {
		t.Fatalf("not one policy in\n%s", html)
	}
	for _, tag := range []string{"<script", "<link"} {
		if first := strings.Index(html, tag); first >= 0 && first < at {
			t.Errorf("%s comes before the policy", tag)
		}
	}
}
