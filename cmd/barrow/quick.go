package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/barrow/mix"
	"example.org/barrow/mix/wire"
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
	set             *pflag.FlagSet
	containers      func(w *wire.Writer)
	defaultMaterial string
}

// begin makes cmd ready for the task's own fields, which come first in its
// help.
func (q *quick) begin(cmd *cobra.Command) {
	q.fields, q.where, q.set = map[string]*string{}, map[string]string{}, cmd.Flags()
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
	return a.plan(&q.output, doc, q.path)
}

// document writes the job.
func (q *quick) document() ([]byte, error) {
	var w wire.Writer
	w.BeginObject()
	w.Key("schema")
	w.Int(1)
	mixID, materials, err := q.filling(&w)
	if err != nil {
		return nil, err
	}
	w.Key("tasks")
	w.BeginArray()
	w.BeginObject()
	text(&w, "kind", q.kind)
	if mixID != "" {
		text(&w, "mix", mixID)
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
	w.EndObject()
	w.EndArray()
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

// value writes one field of the task; counts are numbers, nested fields
// objects.
func (q *quick) value(w *wire.Writer, name string) {
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
func number(w *wire.Writer, s string) {
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

func text(w *wire.Writer, key, s string) {
	w.Key(key)
	w.String(s)
}

// filling writes the mix that --mix spells out, if it does, and returns what
// the task is to name.
func (q *quick) filling(w *wire.Writer) (mixID string, materials []string, err error) {
	switch {
	case q.mix != "" && q.material != "":
		return "", nil, fmt.Errorf("give --mix or --material, not both")
	case q.material != "":
		return "", []string{q.material}, nil
	case q.mix == "" && q.defaultMaterial != "":
		return "", []string{q.defaultMaterial}, nil
	case q.mix == "":
		return "", nil, nil
	}
	parts, spelledOut, err := spelled(q.mix)
	if err != nil {
		return "", nil, err
	}
	if !spelledOut {
		return q.mix, mixMaterials(q.mix), nil
	}
	w.Key("mixes")
	w.BeginArray()
	w.BeginObject()
	text(w, "id", "the-mix")
	text(w, "name", ratioName(parts))
	w.Key("parts")
	w.BeginObject()
	for _, p := range parts {
		text(w, p[0], p[1])
		materials = append(materials, p[0])
		q.where["mixes[0].parts."+p[0]] = "--mix, " + p[0]
	}
	w.EndObject()
	w.EndObject()
	w.EndArray()
	return "the-mix", materials, nil
}

// ratioName calls a mix by its parts: 3:1:1 mix.
func ratioName(parts [][2]string) string {
	n := make([]string, len(parts))
	for i, p := range parts {
		n[i] = p[1]
	}
	return strings.Join(n, ":") + " mix"
}

// spelled reads "bark-fines 3, peat 1": each part a name and a number, either
// way round. Without a comma or a space it is the name of a mix.
func spelled(s string) (parts [][2]string, is bool, err error) {
	if !strings.ContainsAny(s, ", ") {
		return nil, false, nil
	}
	seen := map[string]bool{}
	for part := range strings.SplitSeq(s, ",") {
		var name, number []string
		for _, word := range strings.Fields(part) {
			if strings.ContainsAny(word[:1], "0123456789.") || strings.ContainsRune("½¼¾⅓⅔⅛", []rune(word)[0]) {
				number = append(number, word)
			} else {
				name = append(name, word)
			}
		}
		id := strings.Join(name, "-")
		if seen[id] {
			return nil, false, fmt.Errorf("--mix names %q twice: give each part once", id)
		}
		seen[id] = true
		parts = append(parts, [2]string{id, strings.Join(number, " ")})
	}
	return parts, true, nil
}

// mixMaterials lists the materials of a mix of the catalogue, or nothing.
func mixMaterials(id string) (ids []string) {
	for _, m := range mix.Catalog().Mixes {
		if m.ID == id {
			for _, p := range m.Parts {
				ids = append(ids, p.Of)
			}
		}
	}
	return ids
}

// offer writes one --pack or --bulk: for the material it names, or for each
// that goes in. It returns how many offers there are now.
func (q *quick) offer(w *wire.Writer, kind, s string, materials []string, n int) int {
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
			text(w, "price", price)
		}
		w.EndObject()
		q.where[fmt.Sprintf("offers[%d]", n)] = fmt.Sprintf("--%s %q", kind, s)
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
		if name == "containers" {
			return "the containers"
		}
		if more != "" {
			more = ", " + more
		}
		return "--" + strings.ReplaceAll(name, "_", "-") + more
	}
	if strings.HasPrefix(p, "mixes[0]") {
		return "--mix"
	}
	return p
}
