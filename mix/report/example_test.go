package report_test

import (
	"fmt"

	"example.org/barrow/mix/report"
)

func ExampleHandle() {
	fmt.Printf("%s", report.Handle([]byte(`{"schema": 1, "tasks": []}`)))
	// Output:
	// {
	//   "problems": [
	//     {"path": "tasks", "code": "job.empty", "value": "", "hint": "a job has tasks, such as [{\"kind\": \"cover\", \"area\": \"60 ft x 4 ft\", \"layer\": \"3 in\", \"material\": \"bark-mulch\"}]"}
	//   ]
	// }
}
