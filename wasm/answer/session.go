// Package answer is what the page asks of the library: a verb and documents go
// in, one document comes out, all of them bytes.
//
//	var s answer.Session
//	plan := s.Answer("plan", job)
//
// It does no arithmetic and knows nothing of browsers; package main beside it
// carries the bytes across. Problems are answers too: {"problems": [...]}. A
// [Session] keeps no reference to the documents it is given, and is for one
// goroutine at a time.
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

// Session answers one page. It remembers the last job that it worked out,
// because a page asks for several views of one job in turn. The zero value is
// ready to use.
type Session struct {
	language *lang.Language // nil is English
	job      []byte         // the document of plan
	plan     *mix.Plan
	err      error
}

// verbs are the questions that can be asked.
var verbs = map[string]func(s *Session, docs [][]byte) []byte{
	"language": (*Session).setLanguage,
	"plan":     (*Session).writePlan,
	"full":     (*Session).full,
	"shown":    (*Session).shown,
	"costs":    (*Session).costs,
	"changes":  (*Session).changes,
	"csv":      (*Session).csv,
	"qr":       code,
	"catalog":  func(s *Session, _ [][]byte) []byte { return catalogue(s.language) },
	"sample":   func(*Session, [][]byte) []byte { return mix.Sample() },
}

// Answer answers one question. When the job has problems, or the verb is
// unknown, the answer is the document of problems.
func (s *Session) Answer(verb string, docs ...[]byte) []byte {
	answer, ok := verbs[verb]
	if !ok {
		return s.problem(VerbUnknown, "this page asks for what its program does not know: load the page again")
	}
	return answer(s, docs)
}

// evaluate works out a job, unless it is the one worked out last.
func (s *Session) evaluate(job []byte) (*mix.Plan, error) {
	if s.job == nil || !bytes.Equal(job, s.job) {
		s.job, s.plan = bytes.Clone(job), nil // so that never two plans are kept
		s.plan, s.err = mix.PlanIn(s.language, job)
	}
	return s.plan, s.err
}

// setLanguage sets the language of all later answers: a language file, or
// nothing for English, and the decimal mark, "," or nothing. It forgets the
// last job, whose plan is in the old language.
func (s *Session) setLanguage(docs [][]byte) []byte {
	var l *lang.Language
	if file := document(docs, 0); len(file) > 0 {
		var err error
		if l, err = lang.Parse(file); err != nil {
			return s.problem(LanguageBad, message.Text(err.Error()))
		}
	}
	*s = Session{language: l.Comma(string(document(docs, 1)) == ",")}
	return []byte("{}\n")
}

// document returns docs[i], or nil when there are fewer.
func document(docs [][]byte, i int) []byte {
	if i < len(docs) {
		return docs[i]
	}
	return nil
}

// of answers with something about the plan of a sound job, or with the job's
// problems.
func (s *Session) of(docs [][]byte, write func(*mix.Plan) []byte) []byte {
	p, err := s.evaluate(document(docs, 0))
	if err != nil {
		return report.Problems(err, s.language)
	}
	return write(p)
}

// writePlan answers with the plan, byte for byte what the command line writes.
func (s *Session) writePlan(docs [][]byte) []byte { return s.of(docs, report.Plan) }

// full answers with the plan and what takes longer: how sure it is, and other
// choices.
func (s *Session) full(docs [][]byte) []byte { return s.of(docs, report.Full) }

// shown answers with the drawings that stand beside the plan.
func (s *Session) shown(docs [][]byte) []byte {
	return s.of(docs, func(p *mix.Plan) []byte {
		return drawings(append(append(picture.Tasks(p), picture.Order(p)...), picture.Trips(p)...))
	})
}

// costs answers with the drawings of cost against volume, which take longer.
func (s *Session) costs(docs [][]byte) []byte {
	return s.of(docs, func(p *mix.Plan) []byte { return drawings(picture.Costs(p)) })
}

// drawings writes drawings as {"drawings": [...]}.
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

// changes compares the job as it was, the first document, with the job as it
// is, the second.
func (s *Session) changes(docs [][]byte) []byte {
	before, _ := mix.PlanIn(s.language, document(docs, 0)) // nil when the old job had problems
	return s.of(docs[min(1, len(docs)):], func(after *mix.Plan) []byte { return report.Changes(before, after) })
}

// code answers with the QR code of a text: its size, and the path of its dark
// modules. The answer is {} when the text is too long for a code.
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

// Failed answers after a panic, which is a bug in the program. It drops what
// the session remembers, because that may be half a plan.
func (s *Session) Failed() []byte {
	*s = Session{language: s.language}
	return s.problem(Bug, "the program failed on this job; please report it")
}

// problem returns the document of problems with one that belongs to no field.
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
