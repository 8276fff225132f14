// Package yard turns needs into what to buy and how to bring it home: offers, the
// order of least cost, its lines and bill, trips and deliveries, bags or bulk, and
// what has changed at the yard since.
//
// It knows needs and no tasks. The search itself is in package order; here its
// question is asked, and its answer put into the words of the trade. Counts are
// exact: a need of exactly seven bags buys seven.
package yard
