package mix

import (
	"slices"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Job is everything one person wants worked out together. [Read] makes one
// from a document; a Go program may fill one in itself. The zero value has no
// tasks, which [Job.Plan] reports.
type Job struct {
	Name     string
	Measure  units.Measure  // for what people read; figures do not change
	Currency string         // written before amounts; "" for none
	Language *lang.Language // the reader's language, no part of the document; nil is English

	Materials  []Material
	Containers []Class
	Mixes      []Mix
	Tasks      []Task
	OnHand     []OnHand
	Offers     []Offer
	Haul       Haul
	Delivery   *Delivery   // nil when the yard brings nothing
	Tax        units.Ratio // on what is bought
	Aim        Aim         // what comes first in choosing
	Yard       *Yard       // what has changed at the yard; nil for nothing
}

// OnHand is material already there: loose, as it would leave the shovel, or in
// packs. A pack of a size that the material is sold compressed in counts as a
// bale, by the least that it opens to.
type OnHand struct {
	Material string
	Volume   units.Volume // loose
	Packs    int64        // so many packs of Size, besides
	Size     Size
}

// Haul is what can be driven and what a drive costs. Zero fields are unknown.
type Haul struct {
	Payload  units.Mass   // weight limit of one trip
	Placard  units.Mass   // the door placard's figure, instead of Payload
	People   units.Mass   // and what of it the people weigh
	Room     units.Volume // volume limit of one trip
	TripCost units.Money  // paid for every drive, the first included
}

// Delivery is the yard's own vehicle: a fee for every load. Zero fields are no
// limit.
type Delivery struct {
	Fee      units.Money
	Capacity units.Volume
	Payload  units.Mass
}

// Aim is what comes first in choosing an order. The zero value is the least
// cost.
type Aim uint8

const (
	LeastCost    Aim = iota
	LeastLeft        // the least left over, then cost
	LeastLifting     // the fewest packs lifted by hand, then cost
)

// aims are the words for them.
var aims = []string{"cost", "left over", "lifting"}

// aimWords are what an order is the least of.
var aimWords = [...]message.Text{"cost", "left over", "lifting"}

// String is the word that a document has for it.
func (a Aim) String() string { return aims[min(int(a), len(aims)-1)] }

// ParseAim reads the word; ok is false for any other.
func ParseAim(word string) (a Aim, ok bool) {
	i := slices.Index(aims, word)
	return Aim(max(i, 0)), i >= 0
}

// Bounds on a document. A job of a hundred thousand containers is far inside.
const (
	MaxBytes = 32 << 20
	maxDepth = 16
	maxRows  = 1000   // own materials, containers and stocks, each
	maxOffer = 10_000 // offers
	maxMixes = 100    // own mixes: each may name each
	maxTasks = 10_000
	maxNodes = 2_000_000 // values in all
)

// checkRows bounds the job's own lists; ok is false when one is over its bound.
func (j *Job) checkRows(c *checker) (ok bool) {
	ok = true
	for _, list := range []struct {
		name    string
		n, most int
	}{
		{"materials", len(j.Materials), maxRows},
		{"containers", len(j.Containers), maxRows},
		{"mixes", len(j.Mixes), maxMixes},
		{"offers", len(j.Offers), maxOffer},
		{"on_hand", len(j.OnHand), maxRows},
	} {
		if list.n > list.most {
			c.problemAt(list.name, "job.large", message.Of("at most {0} of these", itoa(int64(list.most))))
			ok = false
		}
	}
	j.Haul.check(c)
	for _, part := range []struct {
		name string
		v    int64
		most int64
	}{
		{"payload", int64(j.Haul.Payload), int64(units.MaxMass)},
		{"placard", int64(j.Haul.Placard), int64(units.MaxMass)},
		{"people", int64(j.Haul.People), int64(units.MaxMass)},
		{"room", int64(j.Haul.Room), int64(units.MaxVolume)},
		{"trip_cost", int64(j.Haul.TripCost), int64(units.MaxMoney)},
	} {
		if part.v < 0 || part.v > part.most {
			c.problemAt("haul", "quantity.large", message.Of("{0} is out of range", part.name))
		}
	}
	if d := j.Delivery; d != nil && (d.Fee < 0 || d.Fee > units.MaxMoney || d.Capacity < 0 || d.Capacity > units.MaxVolume || d.Payload < 0 || d.Payload > units.MaxMass) {
		c.problemAt("delivery", "quantity.large", "fee, capacity and payload are zero or more")
	}
	if j.Aim > LeastLifting {
		c.problemAt("aim", "word.unknown", message.Of("write {=0}", string(or(aims))))
	}
	return ok
}

// check holds payload and placard apart: one of the two.
func (h *Haul) check(c *checker) {
	c.path.push("haul")
	defer c.path.pop()
	switch {
	case h.Payload > 0 && h.Placard > 0:
		c.problemAt("placard", "field.both", "give payload, or placard and people, not both")
	case h.People > 0 && h.Placard == 0:
		c.problemAt("people", "field.alone", "people are taken from the placard's figure: give placard")
	case h.Placard > 0 && h.People == 0:
		c.problemAt("people", "field.missing", "what do the people weigh? the placard's figure is for them and the cargo")
	case h.Placard > 0 && h.People >= h.Placard:
		c.problemAt("people", "haul.full", "the people weigh as much as the placard allows: nothing is left for cargo")
	}
}

// Limit is what may be loaded: the payload, or what the people leave of the
// placard's figure (49 CFR 575.6). Zero is not known.
func (h *Haul) Limit() units.Mass {
	if h.Placard > 0 {
		return max(h.Placard-h.People, 0)
	}
	return h.Payload
}

// schema is the version of the job document that this program reads.
const schema = 1

// document is a Job while it is read.
type document struct {
	Job
	schema int64
}

var jobFields = []field[*document]{
	{"schema", "1", "the version of this document", func(c *checker, n *json.Node, d *document) { d.schema = readCount(c, n, 1) }},
	{"name", "a name", "what the plan is headed with", func(c *checker, n *json.Node, d *document) { d.Name = readName(c, n) }},
	{"measure", "us, metric or both", "the units that the plan is written in; us when left out", func(c *checker, n *json.Node, d *document) {
		if s := oneOf(c, n, "us", "metric", "both"); s != "" {
			d.Measure, _ = units.ParseMeasure(s)
		}
	}},
	{"currency", "a sign", `written before amounts, such as "$"`, func(c *checker, n *json.Node, d *document) {
		if d.Currency = readName(c, n); len([]rune(d.Currency)) > 4 {
			c.problem("name.long", `at most 4 letters, such as "$" or "EUR"`)
		}
	}},
	{"materials", "list", "materials of your own, over the catalogue's", func(c *checker, n *json.Node, d *document) {
		d.Materials = readList(c, n, "materials", func(c *checker, n *json.Node, m *Material) { readObject(c, n, m, "a material", materialFields) })
	}},
	{"containers", "list", "containers of your own, that size may name", func(c *checker, n *json.Node, d *document) {
		d.Containers = readList(c, n, "containers", func(c *checker, n *json.Node, k *Class) { readObject(c, n, k, "a container", classFields) })
	}},
	{"mixes", "list", "mixes of your own", func(c *checker, n *json.Node, d *document) {
		d.Mixes = readList(c, n, "mixes", func(c *checker, n *json.Node, m *Mix) { readObject(c, n, m, "a mix", mixFields) })
	}},
	{"tasks", "list", "the work: fill, amend, backfill, cover", func(c *checker, n *json.Node, d *document) {
		if len(n.Items) > maxTasks {
			c.problem("job.large", message.Of("at most {0} tasks; a fill task takes any number of containers", itoa(maxTasks)))
			return
		}
		d.Tasks = readList(c, n, "tasks", readTask)
	}},
	{"on_hand", "object", `what you have, loose or in packs: {"perlite": "2 cu ft", "peat": "2 x 3.8 cu ft"}`, func(c *checker, n *json.Node, d *document) { d.OnHand = readOnHand(c, n) }},
	{"offers", "list", "what the yard sells, with prices", func(c *checker, n *json.Node, d *document) {
		d.Offers = readList(c, n, "offers", func(c *checker, n *json.Node, o *Offer) { readObject(c, n, o, "an offer", offerFields) })
	}},
	{"tax", "share", "on what is bought, rounded on each line", func(c *checker, n *json.Node, d *document) { d.Tax = readShare(c, n, whole) }},
	{"aim", "cost, left over or lifting", "what comes first in choosing; cost when left out", func(c *checker, n *json.Node, d *document) {
		d.Aim = Aim(max(slices.Index(aims, oneOf(c, n, aims...)), 0))
	}},
	{"delivery", "object", `what the yard brings: {"fee": "45", "capacity": "3 cu yd"}`, func(c *checker, n *json.Node, d *document) {
		d.Delivery = &Delivery{}
		readObject(c, n, d.Delivery, "delivery", deliveryFields)
	}},
	{"yard", "object", "what has changed at the yard since", func(c *checker, n *json.Node, d *document) {
		d.Yard = &Yard{}
		readObject(c, n, d.Yard, "yard", yardFields)
	}},
	{"haul", "object", "what the vehicle carries and what a drive costs", func(c *checker, n *json.Node, d *document) { readObject(c, n, &d.Haul, "haul", haulFields) }},
}

var deliveryFields = []field[*Delivery]{
	{"fee", "amount", "for every load", func(c *checker, n *json.Node, d *Delivery) { d.Fee = readMoney(c, n) }},
	{"capacity", "volume", "of one load", func(c *checker, n *json.Node, d *Delivery) { d.Capacity = readVolume(c, n) }},
	{"payload", "weight", "of one load", func(c *checker, n *json.Node, d *Delivery) { d.Payload = readMass(c, n) }},
}

var haulFields = []field[*Haul]{
	{"payload", "weight", "what may be loaded; or placard", func(c *checker, n *json.Node, h *Haul) { h.Payload = readMass(c, n) }},
	{"placard", "weight", "the door placard's figure for people and cargo; or payload", func(c *checker, n *json.Node, h *Haul) { h.Placard = readMass(c, n) }},
	{"people", "weight", "of all who ride, taken from the placard's figure", func(c *checker, n *json.Node, h *Haul) { h.People = readMass(c, n) }},
	{"room", "volume", "what fits, level", func(c *checker, n *json.Node, h *Haul) { h.Room = readVolume(c, n) }},
	{"trip_cost", "amount", "paid for every drive, the first included", func(c *checker, n *json.Node, h *Haul) { h.TripCost = readMoney(c, n) }},
}

func readOnHand(c *checker, n *json.Node) []OnHand {
	if n.Kind != json.Object {
		c.problem("json.kind", message.Of(`on_hand is an object such as {"perlite": "2 cu ft"}, not {=0}`, n.Kind.String()))
		return nil
	}
	list := make([]OnHand, len(n.Keys))
	for i, key := range n.Keys {
		c.path.push(key)
		list[i] = readStock(c, &n.Items[i])
		list[i].Material = key
		c.path.pop()
	}
	return list
}

// readStock reads "2 cu ft", loose, or "2 x 3.8 cu ft", packs.
func readStock(c *checker, n *json.Node) (h OnHand) {
	text := oneLine(n.Text)
	digits := 0
	for digits < len(text) && '0' <= text[digits] && text[digits] <= '9' {
		digits++
	}
	rest := strings.TrimSpace(text[digits:])
	if size, packs := strings.CutPrefix(rest, "x "); packs && digits > 0 && n.Kind == json.String {
		count := json.Node{Kind: json.Number, Text: text[:digits]}
		h.Packs = readCount(c, &count, 1)
		one := json.Node{Kind: json.String, Text: size}
		readSize(c, &one, &h.Size)
		return h
	}
	h.Volume = readQuantity(c, n, `a volume such as "2 cu ft", or packs such as "2 x 3.8 cu ft"`, false, units.ParseVolume)
	return h
}

// read decodes a job document and reports what its form gets wrong. The error
// is in c; the job is for further checks all the same.
func read(c *checker, data []byte) *Job {
	if len(data) > MaxBytes {
		c.add(&Problem{Code: "json.size", Hint: "a job is at most 32 MB; this is larger"})
		return nil
	}
	root, faults := json.Parse(data, json.Limits{Bytes: MaxBytes, Depth: maxDepth, Nodes: maxNodes})
	for _, f := range faults {
		c.add(&Problem{Path: f.Path, Code: f.Code, Value: f.Value, Hint: message.Of("line {0}, column {1}: {=2}", itoa(int64(f.Line)), itoa(int64(f.Column)), string(f.Reason))})
	}
	if len(faults) > 0 {
		return nil
	}
	c.root = &root
	var d document
	readObject(c, &root, &d, "a job", jobFields)
	switch {
	case root.Kind != json.Object:
	case d.schema > schema:
		c.problemAt("schema", "schema.newer", "made by a newer version; this one reads schema 1")
	case root.Field("schema") == nil:
		c.problemAt("schema", "field.missing", `write "schema": 1, the version of the document`)
	}
	return &d.Job
}

// Decode reads a job document and reports what its form gets wrong, and no more:
// a job that cannot be planned as it stands may be what somebody is to change.
// The error carries every problem; see [Problems].
func Decode(data []byte) (*Job, error) {
	var c checker
	j := read(&c, data)
	if err := c.err(); err != nil {
		return nil, err
	}
	return j, nil
}

// Read decodes and checks a job document: UTF-8 JSON of at most [MaxBytes].
// The error carries every problem at once; see [Problems].
func Read(data []byte) (*Job, error) {
	var c checker
	j := read(&c, data)
	if j == nil {
		return nil, c.err()
	}
	if _, err := j.plan(&c); err != nil {
		return nil, err
	}
	return j, nil
}
