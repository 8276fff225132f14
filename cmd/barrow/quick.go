package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/json"
)

// quick is a task given on the command line. It is written as a job document,
// as typed, and goes the way of every job: nothing is read twice, and every
// problem comes back with its field.
type quick struct {
	output
	kind            string
	mix, material   string
	packs, bulk     []string           // for sale
	fields          map[string]*string // task fields by their document name
	where           map[string]string  // document paths that are not a flag's name
	quiet           map[string]bool    // document paths whose problem is told elsewhere
	set             *pflag.FlagSet
	containers      func(w *json.Writer)
	defaultMaterial string
	extra           map[string]string // task fields that are not flags
	have            []string          // --have
}

// begin makes cmd ready for the task's own fields, which come first in its
// help.
func (q *quick) begin(cmd *cobra.Command) {
	q.fields, q.where, q.quiet, q.set = map[string]*string{}, map[string]string{}, map[string]bool{}, cmd.Flags()
	q.set.SortFlags = false
}

// field adds a flag whose text is a field of the task, under the same name
// with dashes.
func (q *quick) field(name, usage string) {
	q.fields[name] = q.set.String(strings.ReplaceAll(name, "_", "-"), "", usage)
}

// finish adds what every quick command takes. layered tasks lose nothing
// unless told.
func (q *quick) finish(cmd *cobra.Command, layered bool) {
	f := cmd.Flags()
	f.StringVar(&q.mix, "mix", "", "a `MIX` of the catalogue, or parts: \"bark-fines 3, peat 1, perlite 1\"")
	f.StringVar(&q.material, "material", "", "one `MATERIAL` instead (see barrow list materials)")
	usage := "`SHARE` lost in place; left out, the catalogue's for pots"
	if layered {
		usage = "`SHARE` lost in place; left out, none: a layer is measured as spread"
	}
	q.field("settle", usage)
	q.field("blend_loss", "`SHARE` lost when the parts are mixed; left out, the catalogue's")
	q.field("spare", "`SHARE` to have on top, such as 5%")
	f.StringArrayVar(&q.packs, "pack", nil, "a `PACK` for sale: \"2 cu ft\", \"peat=3.8 cu ft\", \"2 cu ft at 4.75\"")
	f.StringArrayVar(&q.bulk, "bulk", nil, "a `STEP` of loose material: \"1/2 yd3\", \"compost=1 yd3 at 38\"")
	q.output.flags(cmd)
	cmd.RegisterFlagCompletionFunc("material", completeWith(materialIDs))
	cmd.RegisterFlagCompletionFunc("mix", completeWith(mixIDs))
}

// plan writes the document, works it out and writes the plan.
func (q *quick) plan(a *app) error {
	if err := q.check(); err != nil {
		return err
	}
	if q.mix == "" && q.material == "" && q.defaultMaterial == "" && len(q.packs)+len(q.bulk) > 0 && q.kind == "backfill" {
		for _, o := range append(q.packs, q.bulk...) {
			if !strings.Contains(o, "=") {
				return fmt.Errorf("--pack and --bulk: of which material? none goes in")
			}
		}
	}
	doc, err := q.document()
	if err != nil {
		return err
	}
	return a.plan(&q.output, doc, q.path, q.quiet)
}

// document writes the job.
func (q *quick) document() ([]byte, error) {
	var w json.Writer
	w.BeginObject()
	w.Key("schema")
	w.Int(1)
	mixText, materials, err := q.filling()
	if err != nil {
		return nil, err
	}
	w.Key("tasks")
	w.BeginArray()
	w.BeginObject()
	text(&w, "kind", q.kind)
	if mixText != "" {
		text(&w, "mix", mixText)
	} else if len(materials) == 1 {
		text(&w, "material", materials[0])
	}
	for _, name := range sortedKeys(q.fields) {
		if q.set.Changed(strings.ReplaceAll(name, "_", "-")) { // empty text is for the check to refuse
			q.value(&w, name)
		}
	}
	if q.containers != nil {
		q.containers(&w)
	}
	for _, name := range sortedKeys(q.extra) {
		text(&w, name, q.extra[name])
	}
	w.EndObject()
	w.EndArray()
	if err := q.onHand(&w); err != nil {
		return nil, err
	}
	w.Key("offers")
	w.BeginArray()
	n := 0
	for _, o := range q.packs {
		n = q.offer(&w, "pack", o, materials, n)
	}
	for _, o := range q.bulk {
		n = q.offer(&w, "bulk", o, materials, n)
	}
	w.EndArray()
	w.EndObject()
	return w.Bytes(), nil
}

// onHand writes what --have says.
func (q *quick) onHand(w *json.Writer) error {
	if len(q.have) == 0 {
		return nil
	}
	w.Key("on_hand")
	w.BeginObject()
	seen := map[string]bool{}
	for _, h := range q.have {
		name, much, ok := strings.Cut(h, "=")
		name = strings.TrimSpace(name)
		if !ok || seen[name] {
			return fmt.Errorf(`--have %q: give each material once, as in "peat=7 cu ft" or "peat=2 x 3.8 cu ft"`, h)
		}
		seen[name] = true
		text(w, name, much)
		q.where["on_hand."+name] = "--have " + name
	}
	w.EndObject()
	return nil
}

// value writes one field of the task; counts are numbers, nested fields
// objects.
func (q *quick) value(w *json.Writer, name string) {
	v := *q.fields[name]
	switch name {
	case "holes":
		w.Key(name)
		number(w, v)
	case "stems":
		count, clear, _ := strings.Cut(v, " at ")
		w.Key(name)
		w.BeginObject()
		w.Key("count")
		number(w, count)
		text(w, "clear", clear)
		w.EndObject()
	case "sheet":
		size, overlap, _ := strings.Cut(v, " overlap ")
		w.Key(name)
		w.BeginObject()
		text(w, "size", size)
		if overlap != "" {
			text(w, "overlap", overlap)
		}
		w.EndObject()
	default:
		text(w, name, v)
	}
}

// number writes digits as a number; anything else as the text it is, for the
// job's check to refuse.
func number(w *json.Writer, s string) {
	s = strings.TrimSpace(s)
	whole, part, _ := strings.Cut(s, ".")
	if whole == "" || strings.Trim(whole+part, "0123456789") != "" || strings.HasSuffix(s, ".") {
		w.String(s)
		return
	}
	if s = strings.TrimLeft(s, "0"); s == "" || s[0] == '.' {
		s = "0" + s
	}
	w.Raw(s)
}

func text(w *json.Writer, key, s string) {
	w.Key(key)
	w.String(s)
}

// filling returns what the task is to name, and the materials of it that are
// known: those that a pack without a material is for.
func (q *quick) filling() (mixText string, materials []string, err error) {
	switch {
	case q.mix != "" && q.material != "":
		return "", nil, fmt.Errorf("give --mix or --material, not both")
	case q.material != "":
		return "", []string{q.material}, nil
	case q.mix == "" && q.defaultMaterial != "":
		return "", []string{q.defaultMaterial}, nil
	}
	return q.mix, catalog.MaterialsOf(q.mix), nil
}

// offer writes one --pack or --bulk: for the material it names, or for each
// that goes in. It returns how many offers there are now.
func (q *quick) offer(w *json.Writer, kind, s string, materials []string, n int) int {
	name, size, named := strings.Cut(s, "=")
	if named {
		materials = []string{strings.TrimSpace(name)}
	} else {
		size = s
	}
	size, price, priced := strings.Cut(size, " at ")
	for _, m := range materials {
		w.BeginObject()
		text(w, "material", m)
		text(w, kind, size)
		if priced {
			text(w, "price", strings.TrimPrefix(strings.TrimSpace(price), "$"))
		}
		w.EndObject()
		q.where[fmt.Sprintf("offers[%d]", n)] = fmt.Sprintf("--%s %q", kind, s)
		if !named { // what is wrong with the material is said where it is named
			q.quiet[fmt.Sprintf("offers[%d].material", n)] = true
		}
		n++
	}
	return n
}

// path turns a path of the document into what was typed on the command line.
func (q *quick) path(p string) string {
	if p == "tasks[0]" {
		return "the " + q.kind + " task"
	}
	for _, doc := range sortedKeys(q.where) {
		flag := q.where[doc]
		if p == doc {
			return flag
		}
		if rest, ok := strings.CutPrefix(p, doc+"."); ok {
			return flag + ", " + rest
		}
	}
	if rest, ok := strings.CutPrefix(p, "tasks[0]."); ok {
		name, more, _ := strings.Cut(rest, ".")
		more = strings.TrimPrefix(more, "parts.")
		if name == "containers" {
			return "the containers"
		}
		if more != "" {
			more = ", " + more
		}
		return "--" + strings.ReplaceAll(name, "_", "-") + more
	}
	return p
}
