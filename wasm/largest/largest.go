// Package largest writes the largest job of each dimension that is accepted: as
// many tasks, container lines, offers of one material, price breaks and so on as
// a job may have. Tests hold to bounds what they cost, and a benchmark measures
// it. The jobs are the same every time.
//
// BenchmarkLargest of web/build prints what each takes here and in the page's program, for the plan and for the
// slowest question that the page asks of it. It is to be below 2 s here, 5 s in the
// page, and 300 MB in both. With other work on the machine, 100,000 container lines
// take 0.6 s of a processor and 271 MB here, 4.8 s and 253 MB in the page; 2,000
// offers 0.03 s for the plan, and in the page 0.7 s, 2.7 s for all choices. The
// bounds that see to it are in mix/job.go, mix/evaluate.go, mix/doc/reader.go,
// mix/ground/area.go, mix/yard/offer.go and mix/sure.go; past its budget of work
// (mix/yard/buy.go) a search says what it could not show.
package largest

import "strings"

// Job is a job that is as large as it may be in one dimension.
type Job struct {
	Name  string
	parts func() []string // fields of the document
	yard  string          // changes there; "" for fewer of every offer
}

// Text is the document of the job.
func (j *Job) Text() []byte { return j.with("") }

// After is the document of the same job after changes at the yard.
func (j *Job) After() []byte {
	if j.yard == "" {
		return j.with(`"yard": {"only_stock": 1000000}, `)
	}
	return j.with(j.yard + ", ")
}

// with puts the parts of the job together.
func (j *Job) with(more string) []byte {
	return []byte(`{"schema": 1, ` + more + strings.Join(j.parts(), ", ") + "}")
}

// Jobs lists the largest jobs.
func Jobs() []Job {
	return []Job{
		job("container lines", func() string { return lines(100_000) }),
		job("tasks that fill", repeat(10_000, fill), packs),
		job("tasks that amend", repeat(10_000, amend), packs),
		job("tasks that backfill", repeat(10_000, backfill), packs),
		job("tasks that cover", repeat(10_000, cover), packs),
		job("parts of tasks", owned, repeat(1000, mixed)),
		job("materials", owned, repeat(20, mixed), inPairs),
		job("mixes in mixes", nest, repeat(250, nested), packs),
		job("containers of one's own", sizes, pots, packs),
		job("corners", func() string { return outlines(500) }),
		job("runs of a strip", func() string { return strip(500_000) }),
		job("areas left out", func() string { return pieces(1000) }),
		job("offers", bed, offers("")),
		job("offers hauled", bed, offers(""), text(haul), text(tax)),
		job("offers delivered", bed, offers(delivered), text(haul), text(yards), text(tax)),
		job("offers by what is left", bed, offers(""), text(haul), text(`"aim": "left over"`)),
		job("offers by lifting", bed, offers(""), text(haul), text(`"aim": "lifting"`)),
		job("stock", field, offers(one), text(haul), text(tax)),
		job("stock delivered", field, offers(one+delivered), text(haul), text(yards), text(tax)),
		job("breaks", bed, broken(20, 1000)),
		job("breaks of many offers", bed, broken(2000, 10), text(haul), text(tax)),
		job("trips", acres, offers(delivered), text(small), text(yards), text(tax)),
		{"changes at the yard", parts(bed, offers("")), changes(1000)},
	}
}

// job puts a job together when it is asked for, since some are large.
func job(name string, fields ...func() string) Job { return Job{name, parts(fields...), ""} }

// parts makes every field.
func parts(fields ...func() string) func() []string {
	return func() (list []string) {
		for _, f := range fields {
			list = append(list, f())
		}
		return list
	}
}

// text is a field that is written out.
func text(field string) func() string { return func() string { return field } }
