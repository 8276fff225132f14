package mix

import (
	"strings"
	"sync"

	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// book is what a job may name: the catalogue's rows, with the job's own rows
// over them. A book is read-only once made.
type book struct {
	cat       *Catalogue
	tongue    *lang.Language
	materials []*Material // needs are indexed as this is
	material  map[string]int
	class     map[string]*Class
	mixes     map[string]*Mix
	blends    map[string]*blend
}

// stock is the book of the catalogue alone.
var stock = sync.OnceValue(func() *book { return bookOf(catalogue()) })

// stockIn is the stock with its names in a language.
func stockIn(t *lang.Language) *book {
	if t.Code() == "en" {
		return stock()
	}
	b := bookOf(catalogue().in(t))
	b.tongue = t
	return b
}

func bookOf(cat *Catalogue) *book {
	b := rowsOf(cat)
	for id := range b.mixes {
		b.open(id)
	}
	return b
}

// rowsOf is a book with the catalogue's rows, its mixes not yet opened.
func rowsOf(cat *Catalogue) *book {
	b := &book{cat: cat, material: map[string]int{}, class: map[string]*Class{}, mixes: map[string]*Mix{}, blends: map[string]*blend{}}
	for i := range cat.Materials {
		b.addMaterial(&cat.Materials[i])
	}
	for i := range cat.Containers {
		b.class[cat.Containers[i].ID] = &cat.Containers[i]
	}
	for i := range cat.Mixes {
		b.mixes[cat.Mixes[i].ID] = &cat.Mixes[i]
	}
	return b
}

// newBook checks the job's own rows and lays them over the catalogue.
func newBook(c *checker, j *Job) *book {
	base := stockIn(j.Language)
	if len(j.Materials)+len(j.Containers)+len(j.Mixes) == 0 {
		return base
	}
	b := rowsOf(base.cat)
	b.tongue = j.Language
	taken := map[string]message.Text{}
	eachRow(c, "materials", j.Materials, func(m *Material) {
		m.check(c)
		claim(c, taken, m.ID, "material")
		if _, is := base.mixes[m.ID]; is && m.ID != "" {
			c.problemAt("id", "id.taken", message.Of("{0} is a mix of the catalogue; give the material another id", m.ID))
		}
		b.addMaterial(m)
	})
	eachRow(c, "containers", j.Containers, func(k *Class) {
		k.check(c)
		claim(c, taken, k.ID, "container")
		b.class[k.ID] = k
	})
	eachRow(c, "mixes", j.Mixes, func(m *Mix) {
		m.check(c)
		claim(c, taken, m.ID, "mix")
		if _, is := b.material[m.ID]; is && m.ID != "" {
			c.problemAt("id", "id.taken", message.Of("{0} is a material; give the mix another id", m.ID))
		}
		b.mixes[m.ID] = m
	})
	eachRow(c, "mixes", j.Mixes, func(m *Mix) { b.checkParts(c, m) })
	b.checkLeaves(c, j.Mixes)
	if c.sound() {
		for id := range b.mixes {
			b.open(id)
		}
	}
	return b
}

// eachRow walks the job's own rows. It works on copies: a check fills in what
// a row left out, and the job stays as it was written.
func eachRow[T any](c *checker, list string, rows []T, do func(*T)) {
	c.path.push(list)
	for i := range rows {
		c.path.pushIndex(i)
		row := rows[i]
		do(&row)
		c.path.pop()
	}
	c.path.pop()
}

// claim reports an id that another of the job's own rows has. Containers are
// named apart from materials and mixes.
func claim(c *checker, taken map[string]message.Text, id string, kind message.Text) {
	key := id
	if kind == "container" {
		key = "container " + id
	}
	if other, is := taken[key]; is && id != "" {
		c.problemAt("id", "id.duplicate", message.Of("another {=0} has this id", string(other)))
	}
	taken[key] = kind
}

func (b *book) addMaterial(m *Material) {
	b.material[m.ID] = len(b.materials)
	b.materials = append(b.materials, m)
}

// checkParts reports parts that name nothing, mixes that end up naming
// themselves, and mixes that are too large when opened up.
func (b *book) checkParts(c *checker, m *Mix) {
	c.path.push("parts")
	defer c.path.pop()
	for _, p := range m.Parts {
		c.path.push(p.Of)
		if _, ok := b.material[p.Of]; !ok {
			inner, ok := b.mixes[p.Of]
			switch {
			case !ok:
				b.unknownMaterial(c, p.Of)
			case inner.ID == m.ID:
				c.problem("mix.itself", "a mix cannot be a part of itself")
			case b.reaches(inner, m.ID, map[string]bool{}):
				c.problem("mix.itself", message.Of("{0} is made with {1}, so neither can be mixed", p.Of, m.ID))
			}
		}
		c.path.pop()
	}
	if !c.sound() {
		return
	}
	if _, _, ok := wholeParts(m.Parts); !ok {
		c.problem("mix.parts", "write the parts as smaller numbers")
	}
}

// checkLeaves reports mixes that are too large when opened up. It waits until
// every mix is sound: then no mix leads back to itself.
func (b *book) checkLeaves(c *checker, mixes []Mix) {
	c.path.push("mixes")
	defer c.path.pop()
	if !c.sound() {
		return
	}
	known := map[string]int{}
	for i := range mixes {
		if b.leaves(&mixes[i], known) > maxLeaves {
			c.path.pushIndex(i)
			c.problemAt("parts", "mix.large", message.Of("more than {0} materials once its mixes are opened up", itoa(maxLeaves)))
			c.path.pop()
		}
	}
}

// reaches reports whether opening m leads to the mix id.
func (b *book) reaches(m *Mix, id string, seen map[string]bool) bool {
	if seen[m.ID] {
		return false
	}
	seen[m.ID] = true
	for _, p := range m.Parts {
		if p.Of == id {
			return true
		}
		if inner, ok := b.mixes[p.Of]; ok && b.reaches(inner, id, seen) {
			return true
		}
	}
	return false
}

// leaves counts the parts of m, mixes opened up, no further than past maxLeaves.
// known holds what is counted already, so that the work grows with the mixes
// and not with the ways through them.
func (b *book) leaves(m *Mix, known map[string]int) int {
	if n, ok := known[m.ID]; ok {
		return n
	}
	n := 0
	for _, p := range m.Parts {
		if n++; n > maxLeaves {
			break
		}
		if inner, ok := b.mixes[p.Of]; ok { // a mix counts besides what it opens to
			n = min(n+b.leaves(inner, known), maxLeaves+1)
		}
	}
	known[m.ID] = n
	return n
}

// open makes the mix id ready to split. Every part it names is in the book and
// none leads back to it.
func (b *book) open(id string) *blend {
	if bl, ok := b.blends[id]; ok {
		return bl
	}
	bl := b.ready(b.mixes[id])
	b.blends[id] = bl
	return bl
}

// ready opens the mixes of m and works out its parts.
func (b *book) ready(m *Mix) *blend {
	bl := &blend{mix: m, of: make([]ingredient, len(m.Parts))}
	bl.parts, bl.whole, _ = wholeParts(m.Parts)
	for i, p := range m.Parts {
		if index, ok := b.material[p.Of]; ok {
			bl.of[i].material = index
		} else {
			bl.of[i].blend = b.open(p.Of)
		}
	}
	for i := range bl.of {
		bl.steps++
		if inner := bl.of[i].blend; inner != nil {
			bl.steps += inner.steps
		}
	}
	bl.loss, bl.from = b.blendLoss(m)
	bl.settleFrom = Source{Text: message.Of("the mix, {0}", m.ID), Kind: "job"}
	return bl
}

// blendLoss is what mixing m loses, and where the figure comes from.
func (b *book) blendLoss(m *Mix) (units.Ratio, Source) {
	switch {
	case m.BlendLoss != nil:
		return *m.BlendLoss, Source{Text: message.Of("the mix, {0}", m.ID), Kind: "job"}
	case len(m.Parts) < 2:
		return units.Ratio{}, arithmetic
	}
	common := b.cat.allowed("blend-loss")
	return common.Share, common.Source
}

// pure is a material alone, as a blend of one part without loss.
func (b *book) pure(index int) *blend {
	m := b.materials[index]
	return &blend{
		mix:   &Mix{ID: m.ID, Name: m.Name, Settle: m.Settle, Source: m.Source},
		parts: []int64{1}, whole: 1, of: []ingredient{{material: index}},
		from: arithmetic, settleFrom: m.SettleSource,
	}
}

func (b *book) materialNames() []string {
	names := make([]string, 0, len(b.materials)+len(b.mixes))
	for _, m := range b.materials {
		names = append(names, m.ID)
	}
	return names
}

func (b *book) mixNames() []string {
	return sortedKeys(b.mixes)
}

func sortedKeys[T any](m map[string]T) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	stable.Sort(keys, strings.Compare)
	return keys
}

// classNames lists every id and every other name, and owners the id of each.
func (b *book) classNames() (names []string, owners map[string]string) {
	owners = map[string]string{}
	for _, id := range sortedKeys(b.class) {
		k := b.class[id]
		names = append(names, id)
		owners[id] = id
		for _, also := range k.Also {
			names = append(names, also)
			owners[also] = id
		}
	}
	return names, owners
}

// unknownMaterial reports a word that names no material.
func (b *book) unknownMaterial(c *checker, word string) {
	if !c.full {
		c.add(c.unknown("material.unknown", word, b.materialNames(), "barrow list materials shows them; a job may add its own under materials"))
	}
}

// unknown is the problem of a word that names nothing, with the nearest names.
func (c *checker) unknown(code, word string, names []string, otherwise message.Text) *Problem {
	if c.full { // the report is complete: do not search for its sake
		return &Problem{}
	}
	_, offset := c.path.find(c.root)
	hint := otherwise
	if meant := meant(word, names); len(meant) > 0 {
		form := message.Text(`did you mean "{0}" or "{1}" or "{2}"?`)
		switch len(meant) {
		case 1:
			form = `did you mean "{0}"?`
		case 2:
			form = `did you mean "{0}" or "{1}"?`
		}
		hint = message.Of(form, meant...)
	}
	return &Problem{Path: c.path.String(), Code: code, Value: clip(word), Hint: hint, offset: offset}
}

// meant finds what somebody called by another name: the nearest spelling, with
// dashes for spaces; else the names that word is a part of, or that are a part
// of it, at most three.
func meant(word string, names []string) (found []string) {
	dashed := strings.Map(func(r rune) rune {
		if r == ' ' {
			return '-'
		}
		return r
	}, spell.Lower(oneLine(word)))
	if one := spell.Word(dashed, names); one != "" {
		return []string{one}
	}
	for _, name := range names {
		small := spell.Lower(name)
		if len(dashed) > 2 && len(small) > 2 && (strings.Contains(small, dashed) || strings.Contains(dashed, small)) && len(found) < 3 {
			found = append(found, name)
		}
	}
	return found
}
