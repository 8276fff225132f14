package task

import (
	"slices"
	"strconv"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
)

// maxTasks is the most tasks of a document, to bound the time that planning takes.
const maxTasks = 10_000

// List reads a list of at most 10000 tasks into a []Task.
var List = doc.Type{Takes: "list", Form: "list", Of: func() *doc.Object { return Object }, Read: readList}

func readList(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	if len(n.Items) > maxTasks {
		r.Problem(doc.JobLarge,
			message.Of("at most {0} tasks; a fill task takes any number of containers", strconv.Itoa(maxTasks)))
		return
	}
	r.Each(n, "tasks", Object, at, func(n *json.Node, row any) { read(r, n, row.(*Task)) })
}

// Object describes the fields that tasks of every kind have in a document.
var Object = &doc.Object{Row: doc.RowOf[Task], ID: "task", Name: "a task", Help: "a task, of any kind", Tables: []doc.Fields{fields}}

var fields = doc.Fields{
	{Name: "kind", Type: &kindWord, About: "what the task does", At: func(any) any { return nil }},
	{Name: "name", Type: &doc.Name, About: "what the plan calls it", At: func(t any) any { return &t.(*Task).Name }},
	{Name: "mix", Type: &mixWord, About: `what goes in: "potting", or "bark-fines 3, peat 1"; or material`, At: func(t any) any { return &t.(*Task).Mix }},
	{Name: "material", Type: &catalog.MaterialWord, About: "what goes in; or mix", At: func(t any) any { return &t.(*Task).Material }},
	{Name: "settle", Type: &doc.Loss, About: "loose volume lost in place; for a layer, 0% when left out", At: func(t any) any { return &t.(*Task).Settle }},
	{Name: "blend_loss", Type: &doc.Loss, About: "volume lost when the parts are mixed, in place of the mix's own", At: func(t any) any { return &t.(*Task).BlendLoss }},
	{Name: "spare", Type: &doc.Extra, About: "what you want on top; 0% when left out", At: func(t any) any { return &t.(*Task).Spare }},
}

var mixWord = doc.Type{Takes: "a mix or parts", Form: "mix", Such: "a mix", Read: doc.ReadWord}

// kindWord does not read anything: read has read the kind before the other fields.
var kindWord = doc.Type{Form: "choice", Words: names, Read: func(*doc.Type, *doc.Reader, *json.Node, any) {}}

// Names returns the names of the kinds, in the order in which the work is done.
func Names() []string { return slices.Clone(names) }

// names are the names of the kinds, in their order.
var names = func() []string {
	list := make([]string, len(kinds))
	for i, k := range kinds {
		list[i] = k.Name
	}
	return list
}()

// read reads a task. It reads the kind first, wherever in the object it is, because
// the kind decides which other fields the task may have.
func read(r *doc.Reader, n *json.Node, t *Task) {
	name := ""
	if k := n.Field("kind"); k != nil {
		r.Enter("kind")
		name = r.OneOf(k, names...)
		r.Leave()
	} else if n.Kind == json.Object {
		r.ProblemAt("kind", doc.FieldMissing, whatItDoes)
	}
	i := slices.IndexFunc(kinds, func(k *Kind) bool { return k.Name == name })
	if i < 0 { // without a kind every field would be reported as unknown
		if n.Kind != json.Object {
			r.Object(n, Object.Name)
		}
		return
	}
	t.Work = kinds[i].New()
	own := kinds[i].Object
	r.Object(n, own.Name, doc.Into{Table: fields, Object: t}, doc.Into{Table: own.Tables[0], Object: t.Work})
}

// Objects lists the kinds of object that tasks have in a document: the task itself,
// each kind with its own fields, and what these contain. Areas are left out, since
// package ground describes them.
func Objects() []*doc.Object {
	list := []*doc.Object{Object}
	for _, k := range kinds {
		list = append(list, k.Object)
		for _, f := range k.Object.Tables[0] {
			if f.Type.Of != nil && f.Type.Form != "area" {
				list = append(list, f.Type.Of())
			}
		}
	}
	return list
}
