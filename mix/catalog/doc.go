// Package catalog holds what a job may name: materials, containers, mixes, soils
// and common allowances, each with its source and how sure it is.
//
// The rows are in catalog.json; embedded.go is the same as a constant. A job may
// add its own rows. [NewScope] checks them and lays them over the catalogue; what a
// task names is looked up in the [Scope], and a mix comes out as a [Blend], ready
// to split exactly.
package catalog
