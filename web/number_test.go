package web_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/report"
)

// numeralJob has a place for a number in every way that a job may have one.
const numeralJob = `{"schema": 1, "tasks": [{"kind": "fill", "mix": "m", "containers": [{"count": %[1]s, "size": "#1"}], "spare": "5%%"},
	{"kind": "backfill", "holes": %[2]s, "width": "3 ft", "depth": "14 in", "ball": "#5", "share": %[3]s, "material": "peat"}],
	"mixes": [{"id": "m", "parts": {"peat": %[4]s, "perlite": 1}}],
	"offers": [{"material": "peat", "pack": "2 cu ft", "price": %[5]s, "stock": %[6]s}], "tax": %[7]s}`

// TestNumeralsMeanTheSame: however a number is written in a job, the page's
// program gets what the command line gets.
func TestNumeralsMeanTheSame(t *testing.T) {
	numerals := []string{"0", "-0", "-0.0", "1", "1.0", "1.50", "4.10", "64", "64.0", "6.4e1", "1e2", "1E2", "1e+2",
		"0.1", "0.10", "1e-1", "1e-7", "1e21", "1e22", "1e999", "1e-999", "0.30000000000000004",
		"0.1000000000000000055511151231257827", "9007199254740993", "9007199254740992", "123456789012345678",
		"1000000000", "999999999999999999999", "-1", "-1.5", "2.675", "1e0", "0e0", "0e999",
		"1.7976931348623159e308", "5e-324", "0.000001", "0.0000001"}
	var jobs []string
	for place := range 7 {
		for _, n := range numerals {
			values := []any{"10", "3", "0.2", "2", "4.5", "50", "0.07"}
			values[place] = n
			jobs = append(jobs, fmt.Sprintf(numeralJob, values...))
		}
	}
	planned := 0
	for i, text := range inPage(t, jobs) {
		was, refused := refusals(t, jobs[i])
		came, refusedThen := refusals(t, text)
		if was != came || refused != refusedThen {
			t.Errorf("%s at place %d:\n as it stands: %s%.300s\n in the page: %s%.300s", numerals[i%len(numerals)],
				i/len(numerals)+1, refused, was, refusedThen, came)
		}
		if refused == "" {
			planned++
		}
	}
	if planned < 20 {
		t.Errorf("only %d of %d jobs were planned", planned, len(jobs))
	}
}

// TestKeysInOrder: JavaScript moves keys that look like numbers to the front of
// an object, and parts come out in another order. No id may look so.
func TestKeysInOrder(t *testing.T) {
	var jobs []string
	for _, ids := range [][2]string{{"b", "10"}, {"b", "2"}, {"z", "0a"}, {"z", "1-2"}, {"z", "007"}, {"z", "1.5"},
		{"z", "#1"}, {"z", "-1"}} {
		jobs = append(jobs, fmt.Sprintf(`{"schema": 1, "materials": [{"id": %[1]q, "name": "One"}, {"id": %[2]q, "name": "Two"}],
			"mixes": [{"id": "m", "parts": {%[1]q: 1, %[2]q: 1, "peat": 1}}], "on_hand": {%[1]q: "1 cu ft", %[2]q: "1 cu ft"},
			"tasks": [{"kind": "fill", "mix": "m", "containers": [{"count": 10, "size": "#1"}]}]}`, ids[0], ids[1]))
	}
	for i, text := range inPage(t, jobs) {
		was, refused := refusals(t, jobs[i])
		came, refusedThen := refusals(t, text)
		if was != came || refused != refusedThen {
			t.Errorf("%s\n as it stands: %s%.300s\n in the page: %s%.300s", jobs[i], refused, was, refusedThen, came)
		}
	}
}

// inPage is what the page makes of jobs and asks of the program.
func inPage(t *testing.T, jobs []string) (texts []string) {
	callNode(t, `
		import {readFileSync} from 'node:fs';
		import {parseDocument} from './store/json.js';
		const jobs = JSON.parse(readFileSync(0, 'utf8'));
		console.log(JSON.stringify(jobs.map(job => { const {doc, why} = parseDocument(job); return why ?? JSON.stringify(doc); })));`, jobs, &texts)
	return texts
}

// refusals is a job's plan, or where it is refused.
func refusals(t *testing.T, job string) (plan, refused string) {
	p, err := mix.PlanDocument([]byte(job))
	if err == nil {
		return string(report.Plan(p)), ""
	}
	var paths []string
	for _, problem := range doc.ProblemsIn(err) {
		paths = append(paths, problem.Path)
	}
	slices.Sort(paths)
	return "", strings.Join(paths, " ")
}
