// Package yard turns needs into what to buy and how to bring it home: offers,
// the order of lowest cost with its lines and bill, trips and deliveries, bags
// or bulk, and what has changed at the yard since.
//
//	t.Check(&r)
//	t.CheckOffers(&r, scope)
//	o := t.Buy(&r, needs)
//
// It knows needs, not tasks. Package order does the search; this package asks
// it the question and puts the answer in the terms of the job.
//
// Counts are exact: a need of exactly seven bags buys seven. Problems are
// reported through a doc.Reader, each with its path; where there are any, there
// is no order. Buying changes neither terms nor needs, so once the offers are
// checked, goroutines with readers of their own can buy at the same time.
package yard
