package mix

import (
	"slices"
	"strconv"
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Job is everything that one person wants worked out together. [Decode] reads one
// from a document, or a Go program fills one in. The zero value has no tasks, which
// [Job.Plan] reports.
type Job struct {
	Name     string
	Measure  units.Measure  // the units of texts; the figures stay the same
	Currency string         // the sign before amounts; "" for none
	Language *lang.Language // the reader's, not part of the document; nil is English

	Materials  []catalog.Material // the job's own rows come before the catalogue's
	Containers []catalog.Class
	Mixes      []catalog.Mix
	Tasks      []task.Task
	OnHand     []yard.OnHand
	Offers     []yard.Offer
	Haul       yard.Haul      // the zero value has no limits and costs nothing
	Delivery   *yard.Delivery // nil when the yard does not deliver
	Tax        units.Ratio    // on what is bought, rounded half up on each line
	Aim        yard.Aim       // what an order is chosen by; the zero value is the least cost
	Yard       *yard.Yard     // what has changed at the yard; nil for nothing

	yards  []*yard.Yard    // changes that are made: part of the offers and the stock by now
	bought []yard.Purchase // by those changes
}

// These are [doc.Problem] and [doc.Problems] under the names that callers of this
// package look for, so that most need not import package doc.
type (
	// Problem is one thing wrong with a job.
	Problem = doc.Problem
	// Problems is everything wrong with a job.
	Problems = doc.Problems
)

// Bounds on a job's own lists, which keep the time and the memory of a plan bounded.
// A job of a million containers is far below them, since a line counts any number.
const (
	maxRows   = 1000 // materials, containers and stocks, each
	maxOffers = 2000
	maxMixes  = 100     // fewer, since every mix may contain every other
	maxLines  = 100_000 // container lines of all tasks
)

// checkRows reports lists that are over their bound; ok is false when there are any.
func (j *Job) checkRows(r *doc.Reader) (ok bool) {
	ok = true
	for _, list := range []struct {
		name    string
		n, most int
	}{
		{"materials", len(j.Materials), maxRows},
		{"containers", len(j.Containers), maxRows},
		{"mixes", len(j.Mixes), maxMixes},
		{"offers", len(j.Offers), maxOffers},
		{"on_hand", len(j.OnHand), maxRows},
	} {
		if list.n > list.most {
			r.ProblemAt(list.name, doc.JobLarge, message.Of("at most {0} of these", strconv.Itoa(list.most)))
			ok = false
		}
	}
	return ok
}

// schema is the version of the job document that this program reads.
const schema = 1

// document is a Job while it is read or written. The version belongs to the document
// and not to the Job: a program that fills in a Job has no use for it.
type document struct {
	Job
	schema int64
}

var jobObject = &doc.Object{ID: "job", Name: "a job", Help: "the job", Tables: []doc.Fields{jobFields}}

var jobFields = doc.Fields{
	{Name: "schema", Type: &version, About: "the version of this document", At: func(d any) any { return &d.(*document).schema }},
	{Name: "name", Type: &doc.Name, About: "what the plan is headed with", At: func(d any) any { return &d.(*document).Name }},
	{Name: "measure", Type: &measure, About: "the units that the plan is written in; us when left out", At: func(d any) any { return &d.(*document).Measure }},
	{Name: "currency", Type: &currency, About: `written before amounts, such as "$"`, At: func(d any) any { return &d.(*document).Currency }},
	{Name: "materials", Type: &materials, About: "materials of your own, beside the catalogue's or in place of them", At: func(d any) any { return &d.(*document).Materials }},
	{Name: "containers", Type: &containers, About: "containers of your own, that size may name", At: func(d any) any { return &d.(*document).Containers }},
	{Name: "mixes", Type: &mixes, About: "mixes of your own", At: func(d any) any { return &d.(*document).Mixes }},
	{Name: "tasks", Type: &task.List, About: "the work: " + strings.Join(task.Names(), ", "), At: func(d any) any { return &d.(*document).Tasks }},
	{Name: "on_hand", Type: &yard.OnHandType, About: `what you have, loose or in packs: {"perlite": "2 cu ft", "peat": "2 x 3.8 cu ft"}`, At: func(d any) any { return &d.(*document).OnHand }},
	{Name: "offers", Type: &offers, About: "what the yard sells, with prices", At: func(d any) any { return &d.(*document).Offers }},
	{Name: "tax", Type: &doc.Share, About: "on what is bought, rounded on each line", At: func(d any) any { return &d.(*document).Tax }},
	{Name: "aim", Type: &yard.AimType, About: "what comes first in choosing; cost when left out", At: func(d any) any { return &d.(*document).Aim }},
	{Name: "delivery", Type: &delivery, About: `what the yard brings: {"fee": "45", "capacity": "3 cu yd"}`, At: func(d any) any { return &d.(*document).Delivery }},
	{Name: "yard", Type: &changed, About: "what has changed at the yard since", At: func(d any) any { return &d.(*document).Yard }},
	{Name: "haul", Type: &haul, About: "what the vehicle carries and what a drive costs", At: func(d any) any { return &d.(*document).Haul }},
}

// The types of the job's lists and objects. They are written out, because the linker
// lays plain data down while a function that makes it is code that runs at the start.
var (
	materials = doc.Type{Takes: "list", Form: "list", Such: "materials",
		Of: func() *doc.Object { return catalog.MaterialObject }, Read: doc.ReadEach}
	containers = doc.Type{Takes: "list", Form: "list", Such: "containers",
		Of: func() *doc.Object { return catalog.ClassObject }, Read: doc.ReadEach}
	mixes = doc.Type{Takes: "list", Form: "list", Such: "mixes",
		Of: func() *doc.Object { return catalog.MixObject }, Read: doc.ReadEach}
	offers = doc.Type{Takes: "list", Form: "list", Such: "offers",
		Of: func() *doc.Object { return yard.OfferObject }, Read: doc.ReadEach}
	delivery = doc.Type{Takes: "object", Form: "object",
		Of: func() *doc.Object { return yard.DeliveryObject }, Read: doc.ReadOne}
	changed = doc.Type{Takes: "object", Form: "object",
		Of: func() *doc.Object { return yard.Object }, Read: doc.ReadOne}
	haul = doc.Type{Takes: "object", Form: "object",
		Of: func() *doc.Object { return yard.HaulObject }, Read: doc.ReadOne}
)

var version = doc.Type{Takes: "1", Form: "fixed", Least: 1, Read: doc.ReadCount}

var measures = []string{"us", "metric", "both"}

var measure = doc.Type{Form: "choice", Words: measures, Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	if s := r.OneOf(n, measures...); s != "" {
		*at.(*units.Measure), _ = units.ParseMeasure(s)
	}
}}

var currency = doc.Type{Takes: "a sign", Form: "text", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	sign := r.Name(n)
	if len([]rune(sign)) > 4 {
		r.Problem(doc.NameLong, `at most 4 letters, such as "$" or "EUR"`)
	}
	*at.(*string) = sign
}}

// Objects lists every kind of object in the job document, the job itself first. They
// are the tables that read it, so a help text or a form made from them has every
// field. The list is the caller's; the objects are read-only.
func Objects() []*doc.Object {
	list := append([]*doc.Object{jobObject}, task.Objects()...)
	list = append(list, ground.Object(), ground.StripObject, ground.RingObject)
	list = append(list, yard.Objects()...)
	return append(list, catalog.MixObject, catalog.MaterialObject, catalog.ClassObject)
}

// read reads a job document and reports what cannot be read. It returns a job even
// with problems, so that planning can go on to check the rest of it, or nil for what
// is not JSON.
func read(r *doc.Reader, data []byte) *Job {
	root := r.Parse(data)
	if root == nil {
		return nil
	}
	var d document
	r.Object(root, jobObject.Name, doc.Into{Table: jobFields, Object: &d})
	switch {
	case root.Kind != json.Object:
	case d.schema > schema:
		r.ProblemAt("schema", doc.SchemaNewer, "made by a newer version; this one reads schema 1")
	case root.Field("schema") == nil:
		r.ProblemAt("schema", doc.FieldMissing, `write "schema": 1, the version of the document`)
	}
	return &d.Job
}

// Decode reads a job document, UTF-8 JSON of at most [doc.MaxBytes] bytes. It checks
// the form of every field, but not whether the job can be planned: a program may read
// an unfinished job in order to complete it. The error is [Problems].
func Decode(data []byte) (*Job, error) {
	var r doc.Reader
	j := read(&r, data)
	if err := r.Err(); err != nil {
		return nil, err
	}
	return j, nil
}

// Clone returns a copy that shares nothing with j but its language, which cannot
// change. It returns nil for nil.
func (j *Job) Clone() *Job {
	if j == nil {
		return nil
	}
	c := *j
	c.Materials, c.Containers, c.Mixes = slices.Clone(j.Materials), slices.Clone(j.Containers), slices.Clone(j.Mixes)
	for i := range c.Materials {
		c.Materials[i] = *c.Materials[i].Clone()
	}
	for i := range c.Containers {
		c.Containers[i].Also = slices.Clone(c.Containers[i].Also)
	}
	for i := range c.Mixes {
		c.Mixes[i] = c.Mixes[i].Clone()
	}
	c.Tasks = slices.Clone(j.Tasks)
	for i := range c.Tasks {
		c.Tasks[i] = c.Tasks[i].Clone()
	}
	c.OnHand, c.Offers = slices.Clone(j.OnHand), slices.Clone(j.Offers)
	for i := range c.Offers {
		c.Offers[i] = c.Offers[i].Clone()
	}
	if j.Delivery != nil {
		delivery := *j.Delivery
		c.Delivery = &delivery
	}
	c.Yard = j.Yard.Clone()
	return &c
}
