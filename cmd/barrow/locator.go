package main

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
)

// locator names the paths of a document as its plan does: a path counts from 0, a plan
// and people count from 1. The zero value names paths of a document that cannot be
// read.
type locator struct{ root *json.Node }

// locatorOf is the locator of a document.
func locatorOf(document []byte) locator {
	root, faults := json.Parse(document, json.Limits{Bytes: doc.MaxBytes})
	if len(faults) > 0 {
		return locator{}
	}
	return locator{&root}
}

// oneOf is what one element of a list is called, where dropping an s does not say it.
var oneOf = map[string]string{
	"mixes": "mix", "bought": "bought", "without": "sold out", "plus": "more ground", "less": "ground left out",
	"along": "run", "people": "person",
}

// name writes a path in words: tasks[1].layer is "task 2 (Pots), layer".
func (l locator) name(path string) string {
	var words []string
	at, list, inTask := l.root, "", false
	for _, step := range steps(path) {
		if i, err := strconv.Atoi(step); err != nil {
			list, at = step, at.Field(step)
			words = append(words, step)
			continue
		} else if at = item(at, i); list != "" {
			words[len(words)-1] = one(list, inTask) + " " + strconv.Itoa(i+1) + called(at, list)
		} else { // a list in a list
			words = append(words, strconv.Itoa(i+1))
		}
		inTask, list = inTask || list == "tasks", ""
	}
	return strings.Join(words, ", ")
}

// steps cuts a path into its fields and indexes. A field never starts with a digit
// unless it is quoted, and then it keeps its quotes.
func steps(path string) (out []string) {
	for path != "" {
		var step string
		switch {
		case strings.HasPrefix(path, `["`):
			quoted, err := strconv.QuotedPrefix(path[1:])
			if err != nil {
				return append(out, path)
			}
			step, path = quoted, strings.TrimPrefix(path[1+len(quoted):], "]")
		case path[0] == '[':
			step, path, _ = strings.Cut(path[1:], "]")
		default:
			n := len(path)
			if i := strings.IndexAny(path, ".["); i >= 0 {
				n = i
			}
			step, path = path[:n], path[n:]
		}
		out, path = append(out, step), strings.TrimPrefix(path, ".")
	}
	return out
}

// item is an element of a list, or nil.
func item(list *json.Node, i int) *json.Node {
	if list == nil || list.Kind != json.Array || i >= len(list.Items) {
		return nil
	}
	return &list.Items[i]
}

// one is what an element of a list is called. The containers of a task are its lines.
func one(list string, inTask bool) string {
	if list == "containers" && inTask {
		return "line"
	}
	return cmp.Or(oneOf[list], strings.TrimSuffix(list, "s"))
}

// called is the name of an element, in brackets, or "" where it has none.
func called(n *json.Node, list string) string {
	if n == nil {
		return ""
	}
	text := func(keys ...string) string {
		for _, key := range keys {
			if f := n.Field(key); f != nil && (f.Kind == json.String || f.Kind == json.Number) && f.Text != "" {
				return f.Text
			}
		}
		return ""
	}
	var is string
	switch list {
	case "tasks":
		is = text("name", "kind")
	case "offers":
		is = strings.TrimSpace(text("material") + " " + text("pack", "bulk"))
	case "containers", "materials", "mixes":
		is = text("id", "name", "size", "holds", "brim", "box", "across", "top")
	case "bought":
		is = text("offer")
	case "without":
		is = n.Text
	}
	if is == "" {
		return ""
	}
	return fmt.Sprintf(" (%s)", doc.Clip(doc.OneLine(is)))
}
