package mix

import (
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// work is a job worked out, before it is laid out as a plan.
type work struct {
	job    *Job
	book   *book
	tasks  []worked
	takes  []Span // loose, by the book's materials
	hand   []units.Volume
	needs  []Need
	offers map[int][]int // the job's offers, by the book's materials
	bought
}

// worked is one task worked out.
type worked struct {
	task *Task
	in   *blend // what goes in; nil when nothing does
	net  Span
	allowed

	pots  []pot // what the kind of task worked out, the others nil
	bed   *bed
	holes *holes
	cover *cover
}

// work checks the whole job and works it out as far as it is sound. The
// problems are in c; with any of them the result is not to be used.
func (j *Job) work(c *checker) *work {
	w := &work{job: j}
	if !j.checkRows(c) {
		return w // checking so many against each other would not end soon
	}
	w.book = newBook(c, j)
	w.takes = make([]Span, len(w.book.materials))
	if len(j.Tasks) == 0 {
		c.problemAt("tasks", "job.empty", `a job has tasks, such as [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 in", "material": "bark-mulch"}]`)
	}
	if !w.doAll(c) {
		return w
	}
	w.onHand(c)
	w.checkOffers(c)
	if c.sound() {
		w.offers = map[int][]int{}
		for i := range j.Offers {
			index := w.book.material[j.Offers[i].Material]
			w.offers[index] = append(w.offers[index], i)
		}
		w.needs = w.pool()
		w.checkMass(c)
		w.bought = w.buy(c)
	}
	return w
}

// doAll works every task out and adds up what they take; ok is false when there
// is more of it than can be worked out, and the rest was left.
func (w *work) doAll(c *checker) (ok bool) {
	j := w.job
	w.tasks = make([]worked, len(j.Tasks))
	steps := 0
	c.path.push("tasks")
	defer c.path.pop()
	for i := range j.Tasks {
		c.path.pushIndex(i)
		w.tasks[i].do(c, w.book, &j.Tasks[i])
		if in := w.tasks[i].in; in != nil {
			steps += in.steps
		}
		if steps > maxSteps {
			c.problem("job.large", message.Of("the tasks before it take all the parts that can be worked out, {0}", itoa(maxSteps)))
			c.path.pop()
			return false
		}
		if !w.tasks[i].spread(w.takes) {
			c.problem("volume.large", "with the tasks before it, more than can be worked out")
		}
		c.path.pop()
	}
	return true
}

// do works one task out.
func (w *worked) do(c *checker, b *book, t *Task) {
	w.task = t
	if !c.sound() && t.Kind() == "" {
		return // no task to speak of
	}
	if t.Kind() == "" {
		c.problemAt("kind", "field.missing", "say what the task does: fill, amend, backfill or cover")
		return
	}
	if t.kinds() > 1 {
		c.problem("task.kinds", "a task does one thing: fill, amend, backfill or cover")
		return
	}
	w.in = t.filling(c, b, t.Backfill != nil)
	switch {
	case t.Fill != nil:
		w.pots, w.net = t.Fill.work(c, b)
	case t.Amend != nil:
		w.bed, w.net = t.Amend.work(c)
	case t.Backfill != nil:
		w.holes, w.net = t.Backfill.work(c, b)
		t.Backfill.pair(c, t)
	default:
		w.cover, w.net = t.Cover.work(c)
	}
	if w.in == nil || !c.sound() {
		return
	}
	settle, blend, spare := t.allowances(b, w.in)
	var ok bool
	if w.allowed, ok = allow(w.net, settle, blend, spare); !ok {
		c.problem("volume.large", "with its allowances, more than can be worked out")
		w.loose = Span{}
	}
}

// pair holds material and share of a backfill together.
func (f *Backfill) pair(c *checker, t *Task) {
	named := t.Material != "" || t.Mix != ""
	switch some := f.Share != (units.Ratio{}); {
	case named && !some:
		c.problemAt("share", "field.missing", `how much of the backfill is it? such as "25%"; or leave the material out`)
	case some && !named:
		c.problemAt("material", "field.missing", "a share of what? name a material, or leave share out")
	}
}

// spread adds what the task takes of each material to takes.
func (w *worked) spread(takes []Span) bool {
	return w.in == nil || w.in.spread(w.loose, takes)
}

// onHand looks up what is there already.
func (w *work) onHand(c *checker) {
	w.hand = make([]units.Volume, len(w.takes))
	c.path.push("on_hand")
	for _, h := range w.job.OnHand {
		c.path.push(h.Material)
		if index, ok := w.book.material[h.Material]; ok {
			w.stock(c, index, h)
		} else {
			w.book.unknownMaterial(c, h.Material)
		}
		c.path.pop()
	}
	c.path.pop()
}

// stock adds what is on hand of one material.
func (w *work) stock(c *checker, index int, h OnHand) {
	m, v := w.book.materials[index], h.Volume
	if v < 0 || v > units.MaxVolume || h.Packs < 0 || h.Packs > 0 && h.Size.Volume <= 0 {
		c.problem("quantity.negative", "zero or more")
		return
	}
	if h.Packs > 0 {
		each := h.Size.Volume
		switch opens := w.job.opensTo(m.ID, each); {
		case opens > 0:
			each = opens
		case m.isBale(each):
			each = m.opened(each).Low
		}
		all, ok := each.Times(h.Packs)
		if !ok {
			c.problem("volume.large", "more than can be worked out")
			return
		}
		v += all
	}
	if w.hand[index] += v; w.hand[index] > units.MaxVolume {
		c.problem("volume.large", "more than can be worked out")
	}
}

// opensTo is what the job's offers say that a pack of the size makes; 0 when
// they do not.
func (j *Job) opensTo(material string, size units.Volume) units.Volume {
	for i := range j.Offers {
		if o := &j.Offers[i]; o.Material == material && o.Pack.Volume == size && o.OpensTo > 0 {
			return o.OpensTo
		}
	}
	return 0
}

// Need is the loose volume of one material over all tasks, less what is on
// hand.
type Need struct {
	Material *Material
	Takes    Span         // over all tasks
	OnHand   units.Volume // of which this much is there already
	Buy      Span         // the need itself

	index int
}

// pool adds the tasks' materials up, in the order in which the tasks first
// name them.
func (w *work) pool() []Need {
	var needs []Need
	seen := make([]bool, len(w.takes))
	var walk func(*blend)
	walk = func(b *blend) {
		for _, in := range b.of {
			switch {
			case in.blend != nil:
				walk(in.blend)
			case !seen[in.material]:
				seen[in.material] = true
				needs = append(needs, w.need(in.material))
			}
		}
	}
	done := map[*blend]bool{}
	for i := range w.tasks {
		if in := w.tasks[i].in; in != nil && !done[in] {
			done[in] = true
			walk(in)
		}
	}
	return needs
}

// checkMass refuses what weighs more than can be worked out.
func (w *work) checkMass(c *checker) {
	for i := range w.needs {
		n := &w.needs[i]
		if _, ok := n.Material.mass(n.Takes.High); !ok {
			c.problemAt("tasks", "weight.large", message.Of("{0} comes to more weight than can be worked out", n.Material.ID))
		}
	}
}

func (w *work) need(index int) Need {
	takes, hand := w.takes[index], w.hand[index]
	less := func(v units.Volume) units.Volume { return max(v-hand, 0) }
	return Need{w.book.materials[index], takes, hand, Span{less(takes.Low), less(takes.Plan), less(takes.High)}, index}
}
