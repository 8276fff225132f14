// Package answer is what the page asks of the library: a verb and documents in,
// one document out, all of them bytes. It holds no arithmetic and knows no
// browser; package main beside it carries the bytes across.
package answer

import (
	"bytes"

	"example.org/barrow/mix"
	"example.org/barrow/mix/picture"
	"example.org/barrow/mix/wire"
	"example.org/barrow/mix/words"
	"example.org/barrow/units/say"
	"example.org/barrow/wasm/qr"
)

// Desk answers one page. It keeps the last job that it worked out, since a page
// asks for several views of one job in turn. The zero value is ready; it is not
// for use by several goroutines.
type Desk struct {
	tongue *words.Tongue // nil is English
	job    []byte        // the document of plan
	plan   *mix.Plan
	err    error
}

// verbs are what can be asked.
var verbs = map[string]func(d *Desk, docs [][]byte) []byte{
	"tongue":  (*Desk).speak,
	"plan":    (*Desk).planned,
	"full":    (*Desk).full,
	"shown":   (*Desk).shown,
	"costs":   (*Desk).costs,
	"changes": (*Desk).changes,
	"csv":     (*Desk).csv,
	"qr":      code,
	"catalog": func(d *Desk, _ [][]byte) []byte { return catalog(d.tongue) },
	"sample":  func(*Desk, [][]byte) []byte { return mix.Sample() },
}

// Answer answers one question. What the job gets wrong comes back as the
// problems' document; a verb that is unknown, as a problem too.
func (d *Desk) Answer(verb string, docs ...[]byte) []byte {
	answer, ok := verbs[verb]
	if !ok {
		return d.problem("verb.unknown", "this page asks for what its program does not know: load the page again")
	}
	return answer(d, docs)
}

// work works a job out, unless it is the one worked out last.
func (d *Desk) work(job []byte) (*mix.Plan, error) {
	if d.job == nil || !bytes.Equal(job, d.job) {
		d.job = bytes.Clone(job)
		d.plan, d.err = mix.PlanDocument(job, d.spoken)
	}
	return d.plan, d.err
}

// spoken sets the reader's language.
func (d *Desk) spoken(j *mix.Job) { j.Tongue = d.tongue }

// speak takes the language of everything that follows: a language file, or
// nothing for English, and the decimal mark, "," or nothing.
func (d *Desk) speak(docs [][]byte) []byte {
	var t *words.Tongue
	if file := document(docs, 0); len(file) > 0 {
		var err error
		if t, err = words.Parse(file); err != nil {
			return d.problem("tongue.bad", say.Phrase(err.Error()))
		}
	}
	*d = Desk{tongue: t.Comma(string(document(docs, 1)) == ",")}
	return []byte("{}\n")
}

// document is docs[i], or nothing.
func document(docs [][]byte, i int) []byte {
	if i < len(docs) {
		return docs[i]
	}
	return nil
}

// of answers with what a sound job's plan has to say.
func (d *Desk) of(docs [][]byte, write func(*mix.Plan) []byte) []byte {
	p, err := d.work(document(docs, 0))
	if err != nil {
		return mix.ProblemsJSON(err, d.tongue)
	}
	return write(p)
}

// planned answers with the plan, byte for byte what the command line writes.
func (d *Desk) planned(docs [][]byte) []byte { return d.of(docs, (*mix.Plan).JSON) }

// full answers with the plan and what takes longer: how sure, other choices.
func (d *Desk) full(docs [][]byte) []byte { return d.of(docs, (*mix.Plan).FullJSON) }

// shown answers with what is laid out beside the plan: its drawings.
func (d *Desk) shown(docs [][]byte) []byte {
	return d.of(docs, func(p *mix.Plan) []byte {
		return drawings(append(append(picture.Tasks(p), picture.Order(p)...), picture.Trips(p)...))
	})
}

// costs answers with the drawings of cost against volume, which take longer.
func (d *Desk) costs(docs [][]byte) []byte {
	return d.of(docs, func(p *mix.Plan) []byte { return drawings(picture.Costs(p)) })
}

func drawings(list []picture.Drawing) []byte {
	var w wire.Writer
	w.BeginObject()
	w.Key("drawings")
	picture.Write(&w, list)
	w.EndObject()
	return w.Bytes()
}

// csv answers with rows for a spreadsheet.
func (d *Desk) csv(docs [][]byte) []byte { return d.of(docs, (*mix.Plan).CSV) }

// changes compares the job as it was with the job as it is.
func (d *Desk) changes(docs [][]byte) []byte {
	before, _ := mix.PlanDocument(document(docs, 0), d.spoken) // as it stood it may have been no plan
	return d.of(docs[min(1, len(docs)):], func(after *mix.Plan) []byte { return mix.ChangesJSON(before, after) })
}

// code answers with the QR code of a text, as a square and the path of its dark
// modules; {} when it is too long for one.
func code(_ *Desk, docs [][]byte) []byte {
	var w wire.Writer
	w.BeginObject()
	if size, path, ok := qr.Path(string(document(docs, 0))); ok {
		w.Key("size")
		w.Int(int64(size))
		w.Key("path")
		w.String(string(path))
	}
	w.EndObject()
	return w.Bytes()
}

// Failed answers for a panic, which is a bug of the program: what the desk
// remembers may be half a plan, and is dropped.
func (d *Desk) Failed() []byte {
	*d = Desk{tongue: d.tongue}
	return d.problem("bug", "the program failed on this job; please report it")
}

// problem is the problems' document with one problem that is of no field.
func (d *Desk) problem(code string, hint say.Phrase) []byte {
	var w wire.Writer
	w.BeginObject()
	w.Key("problems")
	w.BeginArray()
	w.BeginObject()
	for _, kv := range [...][2]string{{"path", ""}, {"code", code}, {"value", ""}, {"hint", d.tongue.Tell(hint)}} {
		w.Key(kv[0])
		w.String(kv[1])
	}
	w.EndObject()
	w.EndArray()
	w.EndObject()
	return w.Bytes()
}
