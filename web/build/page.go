package main

import (
	"bytes"
	"errors"
	"fmt"
	"html"
	"io"
	"strings"

	parse "golang.org/x/net/html"

	"example.org/barrow/web/policy"
)

// page checks index.html and puts its policy into it, right after its charset.
// made has what the page may refer to.
func page(source []byte, made files) ([]byte, error) {
	return rewrite(source, func(tag parse.Token, raw string) (string, error) {
		if isCharset(tag) {
			raw += policyTag(policy.Page())
		}
		return raw, check(tag, made)
	})
}

// rewrite walks the tags of a page and puts what edit returns in place of each.
// Comments go; text stays as it is. A page without a charset has no place for a
// policy and is refused.
func rewrite(source []byte, edit func(tag parse.Token, raw string) (string, error)) ([]byte, error) {
	var out bytes.Buffer
	var faults []error
	charset := false
	for z := parse.NewTokenizer(bytes.NewReader(source)); ; {
		switch z.Next() {
		case parse.ErrorToken:
			if z.Err() != io.EOF {
				faults = append(faults, z.Err())
			}
			if !charset {
				faults = append(faults, errors.New("no <meta charset> to put the policy after"))
			}
			return out.Bytes(), errors.Join(faults...)
		case parse.StartTagToken, parse.SelfClosingTagToken, parse.EndTagToken:
			raw := string(z.Raw()) // before the token, which is unescaped in place
			tag := z.Token()
			charset = charset || isCharset(tag)
			text, err := edit(tag, raw)
			if err != nil {
				faults = append(faults, fmt.Errorf("%s: %w", raw, err))
			}
			out.WriteString(text)
		case parse.CommentToken:
		default:
			out.Write(z.Raw())
		}
	}
}

func isCharset(tag parse.Token) bool { return tag.Data == "meta" && attr(tag, "charset") != "" }

func policyTag(p string) string {
	content := strings.ReplaceAll(html.EscapeString(p), "&#39;", "'")
	return "\n" + `<meta http-equiv="Content-Security-Policy" content="` + content + `">`
}

// check refuses what the policy would, and what would come from elsewhere: code
// and style written into the page, and addresses that are not files beside it.
func check(tag parse.Token, made files) error {
	if tag.Type == parse.EndTagToken {
		return nil
	}
	if tag.Data == "script" && attr(tag, "src") == "" {
		return errors.New("script written into the page: put it in a file")
	}
	if tag.Data == "style" || tag.Data == "base" || tag.Data == "iframe" || tag.Data == "object" || tag.Data == "embed" {
		return fmt.Errorf("no place for <%s>", tag.Data)
	}
	if tag.Data == "meta" && attr(tag, "http-equiv") != "" {
		return errors.New("the build puts the policy in")
	}
	for _, a := range tag.Attr {
		switch {
		case a.Key == "style":
			return errors.New("style written into the page: put it in a file")
		case strings.HasPrefix(a.Key, "on"):
			return errors.New("code written into the page: put it in a file")
		case a.Key == "src" || a.Key == "href" || a.Key == "srcset" || a.Key == "action" || a.Key == "poster":
			if name := a.Val; made[name] == nil && !strings.HasPrefix(name, "#") {
				return fmt.Errorf("%s names %q, which is not built", a.Key, name)
			}
		}
	}
	return nil
}

func attr(tag parse.Token, key string) string {
	for _, a := range tag.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}
