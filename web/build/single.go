package main

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"fmt"
	"html"
	"path"
	"strings"

	parse "golang.org/x/net/html"

	"example.org/barrow/web/policy"
)

// single puts the whole page into one file that opens with no host at all:
// style and scripts in place of the tags that fetch them, and as blocks of text
// the program and the languages. web/shell/assets.js finds them there.
//
// The worker's script runs where it stands too, and then only says how to work:
// where a browser lets a file start no worker, the page does so itself. Either
// way it talks through a port in place of its own self.
func single(source []byte, made files) ([]byte, error) {
	style := string(made["style.css"])
	worker := "function barrowWorker(self){" + string(made["worker.js"]) + "\nself.start()}\n" + workerEnd
	main := string(made["main.js"])
	for _, text := range []string{style, worker, main} {
		if err := fitsInside(text); err != nil {
			return nil, err
		}
	}
	program, err := packed(made["barrow.wasm"])
	if err != nil {
		return nil, err
	}
	var blocks strings.Builder
	for _, name := range made.names() {
		if dir, file := path.Split(name); dir == "text/" {
			text := strings.ReplaceAll(string(made[name]), "<", `\u003c`) // the same to a reader of JSON
			fmt.Fprintf(&blocks, "<script type=\"application/json\" id=\"barrow-text-%s\">%s</script>\n",
				strings.TrimSuffix(file, ".json"), text)
		}
	}
	if err := fitsInside(string(made["licences.txt"])); err != nil {
		return nil, err
	}
	fmt.Fprintf(&blocks, "<script type=\"text/plain\" id=\"licences\">%s</script>\n", made["licences.txt"])
	fmt.Fprintf(&blocks, "<script type=\"text/plain\" id=\"barrow-wasm\">%s</script>\n", program)
	fmt.Fprintf(&blocks, "<script id=\"barrow-worker\">%s</script>\n<script type=\"module\">%s</script>\n", worker, main)
	skip := false // the end of a script that is gone
	return rewrite(source, func(tag parse.Token, raw string) (string, error) {
		switch {
		case skip && tag.Type == parse.EndTagToken:
			skip = false
			return "", nil
		case isCharset(tag):
			return raw + policyTag(policy.Single([]string{worker, main}, []string{style})), nil
		case tag.Data == "script":
			skip = true
			if src := attr(tag, "src"); src != "main.js" && src != "early.js" {
				return "", fmt.Errorf("the single file has no place for %q", src)
			}
			return "", nil
		case tag.Data == "link":
			return linkInside(tag, style, made)
		case tag.Data == "body" && tag.Type == parse.EndTagToken:
			return blocks.String() + raw, nil
		}
		return raw, nil
	})
}

// workerEnd says in a worker that it runs, and has it work through the port that
// it is sent then.
const workerEnd = `if(typeof document==="undefined"){onmessage=e=>barrowWorker(e.ports[0]);postMessage(null)}`

// linkInside is what stands for a link in the single file.
func linkInside(tag parse.Token, style string, made files) (string, error) {
	name := attr(tag, "href")
	switch attr(tag, "rel") {
	case "stylesheet":
		if name != "style.css" {
			return "", fmt.Errorf("the single file has no place for %q", name)
		}
		return "<style>" + style + "</style>", nil
	case "icon":
		if path.Ext(name) != ".svg" {
			return "", nil // one is enough
		}
		data := "data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(made[name])
		return `<link rel="icon" type="image/svg+xml" href="` + html.EscapeString(data) + `">`, nil
	}
	return "", nil // what only a host can give
}

// packed is the program as text.
func packed(program []byte) (string, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err := z.Write(program); err != nil {
		return "", err
	}
	if err := z.Close(); err != nil {
		return "", err
	}
	return base64.StdEncoding.EncodeToString(b.Bytes()), nil
}

// fitsInside refuses a text that would end, or upset, the element it stands in.
// The bundler writes such ends in a way that does no harm.
func fitsInside(text string) error {
	low := strings.ToLower(text)
	for _, bad := range []string{"</script", "</style", "<script", "<!--", "\r", "\x00"} {
		if strings.Contains(low, bad) {
			return fmt.Errorf("a script, style or text has %q in it and cannot stand in a page", bad)
		}
	}
	return nil
}
