package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"example.org/barrow/wasm/answer"
	"example.org/barrow/wasm/largest"
	"example.org/barrow/web/test"
)

// everyVerb is what the page may ask of a job.
var everyVerb = []string{"plan", "full", "shown", "costs", "csv", "changes"}

// measured is what the verbs of a job took.
type measured struct {
	MS    map[string]float64
	Bytes int64
}

// TestPageMemory: however long a call is, its garbage is collected before it ends,
// and so the program's memory stays near what it uses. It goes by bytes, not by the
// clock. Collected beside the call it came to 20 to 140 MB here, by chance.
func TestPageMemory(t *testing.T) {
	t.Parallel()
	dist := placed(t)
	for _, j := range largest.Jobs() {
		if j.Name == "stock" || j.Name == "offers delivered" {
			got := inPage(t, dist, &j, []string{"plan", "full"})
			require.Less(t, got.Bytes, int64(64<<20), j.Name)
		}
	}
}

// TestAboveTwoGigabytes: an address is no negative number.
func TestAboveTwoGigabytes(t *testing.T) {
	t.Parallel()
	out, err := exec.Command(test.Node(t), "testdata/above.mjs", placed(t)).CombinedOutput()
	require.NoError(t, err, string(out))
	require.Equal(t, "verbtext\n", string(out))
}

// placed is the folder of the built page.
func placed(t testing.TB) string {
	t.Helper()
	made, err := once()
	require.NoError(t, err)
	dist := t.TempDir()
	require.NoError(t, place(made.files, dist))
	return dist
}

// inPage asks the built worker in node about a job.
func inPage(t testing.TB, dist string, j *largest.Job, verbs []string) (got measured) {
	t.Helper()
	dir := t.TempDir()
	job, after := filepath.Join(dir, "job"), filepath.Join(dir, "after")
	require.NoError(t, os.WriteFile(job, j.Text(), 0o600))
	require.NoError(t, os.WriteFile(after, j.After(), 0o600))
	cmd := exec.Command(test.Node(t), append([]string{"testdata/measure.mjs", dist, job, after}, verbs...)...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err, j.Name)
	require.NoError(t, json.Unmarshal(out, &got))
	return got
}

// BenchmarkLargest asks everything of the largest job of each dimension, here and
// in the page's program under node, and reports for each the milliseconds of a
// processor, for the plan and for the slowest question, and the memory in MB: all
// that Go took from the system here, in a process of its own; what the program's
// memory came to there.
func BenchmarkLargest(b *testing.B) {
	dist := placed(b)
	for _, j := range largest.Jobs() {
		b.Run(j.Name+"/here", func(b *testing.B) {
			for b.Loop() {
				tell(b, apart(b, j.Name))
			}
		})
		b.Run(j.Name+"/page", func(b *testing.B) {
			for b.Loop() {
				tell(b, inPage(b, dist, &j, everyVerb))
			}
		})
	}
}

// tell reports what a job took.
func tell(b *testing.B, m measured) {
	slowest := 0.0
	for _, ms := range m.MS {
		slowest = max(slowest, ms)
	}
	b.ReportMetric(m.MS["plan"], "plan-ms")
	b.ReportMetric(slowest, "slowest-ms")
	b.ReportMetric(float64(m.Bytes)/1e6, "MB")
	b.ReportMetric(0, "ns/op")
}

// apart asks everything of the job of a name in a process of its own: this test
// program once more, with the name in its environment.
func apart(t testing.TB, name string) (got measured) {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run", "^TestApart$")
	cmd.Env = append(os.Environ(), "BARROW_LARGEST="+name)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err, name)
	require.NoError(t, json.NewDecoder(bytes.NewReader(out)).Decode(&got))
	return got
}

// TestApart is what apart runs, and nothing otherwise.
func TestApart(t *testing.T) {
	name := os.Getenv("BARROW_LARGEST")
	for _, j := range largest.Jobs() {
		if j.Name == name {
			require.NoError(t, json.NewEncoder(os.Stdout).Encode(here(&j)))
		}
	}
}

// here asks everything of a job in this process.
func here(j *largest.Job) measured {
	debug.SetGCPercent(50) // as the command has it
	job, after := j.Text(), j.After()
	m := measured{MS: map[string]float64{}}
	var s answer.Session
	for _, verb := range everyVerb {
		docs := [][]byte{job}
		if verb == "changes" {
			docs = append(docs, after)
		}
		start := time.Now()
		s.Answer(verb, docs...)
		m.MS[verb] = float64(time.Since(start).Microseconds()) / 1000
	}
	var mem runtime.MemStats
	runtime.ReadMemStats(&mem)
	m.Bytes = int64(mem.Sys)
	return m
}
