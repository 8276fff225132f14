package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/task"
)

// quick is a task given on the command line. It is written as a job document,
// as typed, and goes the way of every job: nothing is read twice, and every
// problem comes back with its field.
type quick struct {
	output
	kind            *task.Kind
	packs, bulk     []string          // for sale
	fields          map[string]*field // task fields by their document name
	where           map[string]string // document paths that are not a flag's name
	quiet           map[string]bool   // document paths whose problem is told elsewhere
	set             *pflag.FlagSet
	containers      func(w *json.Writer)
	defaultMaterial string
	extra           map[string]string // task fields that are not flags
	have            []string          // --have
}

// flags gives cmd a flag for every field that can be written in one line: those
// that are its own, then those of every task, then what is for sale. What is written
// and where has flags of its own, see output. Their names,
// what they take and what they are come from the tables of the document.
func (q *quick) flags(cmd *cobra.Command, own []doc.Field) {
	q.fields, q.where, q.quiet, q.set = map[string]*field{}, map[string]string{}, map[string]bool{}, cmd.Flags()
	q.set.SortFlags = false
	for _, f := range append(own, task.Object.Fields()...) {
		if f.Name != "kind" && f.Name != "name" {
			q.flag(f)
		}
	}
	q.set.StringArrayVar(&q.packs, "pack", nil, "a `PACK` for sale: \"2 cu ft\", \"peat=3.8 cu ft\", \"2 cu ft at 4.75\"")
	q.set.StringArrayVar(&q.bulk, "bulk", nil, "a `STEP` of loose material: \"1/2 yd3\", \"compost=1 yd3 at 38\"")
	cmd.RegisterFlagCompletionFunc("material", completeWith(materialIDs))
	cmd.RegisterFlagCompletionFunc("mix", completeWith(mixIDs))
}

// plan writes the document, works it out and writes the plan.
func (q *quick) plan(a *app) error {
	if err := q.check(); err != nil {
		return err
	}
	if q.mix() == "" && q.material() == "" && q.defaultMaterial == "" && len(q.packs)+len(q.bulk) > 0 && q.kind.Bare {
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
	text(&w, "kind", q.kind.Name)
	if mixText != "" {
		text(&w, "mix", mixText)
	} else if len(materials) == 1 {
		text(&w, "material", materials[0])
	}
	for _, name := range sortedKeys(q.fields) {
		f := q.fields[name]
		if name != "mix" && name != "material" && q.set.Changed(f.flag()) { // empty text is for the check to refuse
			f.write(&w)
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
	switch mixed, pure := q.mix(), q.material(); {
	case mixed != "" && pure != "":
		return "", nil, fmt.Errorf("give --mix or --material, not both")
	case pure != "":
		return "", []string{pure}, nil
	case mixed == "" && q.defaultMaterial != "":
		return "", []string{q.defaultMaterial}, nil
	default:
		return mixed, catalog.MaterialsOf(mixed), nil
	}
}

// mix is what --mix says, and material what --material says.
func (q *quick) mix() string      { return q.fields["mix"].text }
func (q *quick) material() string { return q.fields["material"].text }

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
		return "the " + q.kind.Name + " task"
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
		return "--" + flagName(name) + more
	}
	return p
}
