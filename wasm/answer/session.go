// Package answer is what the page asks of the library: a verb and documents in,
// one document out, all of them bytes. It holds no arithmetic and knows no
// browser; package main beside it carries the bytes across.
package answer

import (
	"bytes"

	"example.org/barrow/mix"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/picture"
	"example.org/barrow/mix/report"
	"example.org/barrow/units/message"
	"example.org/barrow/wasm/qr"
)

// Session answers one page. It keeps the last job that it worked out, since a page
// asks for several views of one job in turn. The zero value is ready; it is not
// for use by several goroutines.
type Session struct {
	language *lang.Language // nil is English
	job      []byte         // the document of plan
	plan     *mix.Plan
	err      error
}

// verbs are what can be asked.
var verbs = map[string]func(s *Session, docs [][]byte) []byte{
	"language": (*Session).speak,
	"plan":     (*Session).planned,
	"full":     (*Session).full,
	"shown":    (*Session).shown,
	"costs":    (*Session).costs,
	"changes":  (*Session).changes,
	"csv":      (*Session).csv,
	"qr":       code,
	"catalog":  func(s *Session, _ [][]byte) []byte { return catalogue(s.language) },
	"sample":   func(*Session, [][]byte) []byte { return mix.Sample() },
}

// Answer answers one question. What the job gets wrong comes back as the
// problems' document; a verb that is unknown, as a problem too.
func (s *Session) Answer(verb string, docs ...[]byte) []byte {
	answer, ok := verbs[verb]
	if !ok {
		return s.problem(VerbUnknown, "this page asks for what its program does not know: load the page again")
	}
	return answer(s, docs)
}

// work works a job out, unless it is the one worked out last.
func (s *Session) work(job []byte) (*mix.Plan, error) {
	if s.job == nil || !bytes.Equal(job, s.job) {
		s.job = bytes.Clone(job)
		s.plan, s.err = mix.PlanDocument(job, s.spoken)
	}
	return s.plan, s.err
}

// spoken sets the reader's language.
func (s *Session) spoken(j *mix.Job) { j.Language = s.language }

// speak takes the language of everything that follows: a language file, or
// nothing for English, and the decimal mark, "," or nothing.
func (s *Session) speak(docs [][]byte) []byte {
	var t *lang.Language
	if file := document(docs, 0); len(file) > 0 {
		var err error
		if t, err = lang.Parse(file); err != nil {
			return s.problem(LanguageBad, message.Text(err.Error()))
		}
	}
	*s = Session{language: t.Comma(string(document(docs, 1)) == ",")}
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
func (s *Session) of(docs [][]byte, write func(*mix.Plan) []byte) []byte {
	p, err := s.work(document(docs, 0))
	if err != nil {
		return report.Problems(err, s.language)
	}
	return write(p)
}

// planned answers with the plan, byte for byte what the command line writes.
func (s *Session) planned(docs [][]byte) []byte { return s.of(docs, report.Plan) }

// full answers with the plan and what takes longer: how sure, other choices.
func (s *Session) full(docs [][]byte) []byte { return s.of(docs, report.Full) }

// shown answers with what is laid out beside the plan: its drawings.
func (s *Session) shown(docs [][]byte) []byte {
	return s.of(docs, func(p *mix.Plan) []byte {
		return drawings(append(append(picture.Tasks(p), picture.Order(p)...), picture.Trips(p)...))
	})
}

// costs answers with the drawings of cost against volume, which take longer.
func (s *Session) costs(docs [][]byte) []byte {
	return s.of(docs, func(p *mix.Plan) []byte { return drawings(picture.Costs(p)) })
}

func drawings(list []picture.Drawing) []byte {
	var w json.Writer
	w.BeginObject()
	w.Key("drawings")
	picture.Write(&w, list)
	w.EndObject()
	return w.Bytes()
}

// csv answers with rows for a spreadsheet.
func (s *Session) csv(docs [][]byte) []byte { return s.of(docs, report.CSV) }

// changes compares the job as it was with the job as it is.
func (s *Session) changes(docs [][]byte) []byte {
	before, _ := mix.PlanDocument(document(docs, 0), s.spoken) // as it stood it may have been no plan
	return s.of(docs[min(1, len(docs)):], func(after *mix.Plan) []byte { return report.Changes(before, after) })
}

// code answers with the QR code of a text, as a square and the path of its dark
// modules; {} when it is too long for one.
func code(_ *Session, docs [][]byte) []byte {
	var w json.Writer
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

// Failed answers for a panic, which is a bug of the program: what the session
// remembers may be half a plan, and is dropped.
func (s *Session) Failed() []byte {
	*s = Session{language: s.language}
	return s.problem(Bug, "the program failed on this job; please report it")
}

// problem is the problems' document with one problem that is of no field.
func (s *Session) problem(code string, hint message.Text) []byte {
	var w json.Writer
	w.BeginObject()
	w.Key("problems")
	w.BeginArray()
	w.BeginObject()
	for _, kv := range [...][2]string{{"path", ""}, {"code", code}, {"value", ""}, {"hint", s.language.Text(hint)}} {
		w.Key(kv[0])
		w.String(kv[1])
	}
	w.EndObject()
	w.EndArray()
	w.EndObject()
	return w.Bytes()
}
