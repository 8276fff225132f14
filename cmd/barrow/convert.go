package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/convert"
)

// convertCommand is the only one that needs exact fractions, so only it uses
// package convert.
func (a *app) convertCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "convert QUANTITY UNIT",
		Short: "any quantity in any unit of its kind",
		Long: `Writes a quantity in another unit. The unit decides what is measured: a yard is
a cubic yard when you ask for cubic feet, and a yard when you ask for feet.
barrow list units shows the units.`,
		Example: `  barrow convert "2 yd3" "cu ft"
  barrow convert "2' 6\"" cm
  barrow convert "1100 lb/yd3" kg/m3`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return fmt.Errorf(
					`give a quantity and a unit, in quotes where they have spaces: barrow convert "2 yd3" "cu ft"`)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			c, err := convert.Quantity(args[0], args[1])
			if err != nil {
				return convertProblem(err, args[1], asJSON)
			}
			if asJSON {
				var w json.Writer
				w.BeginObject()
				w.Key("value")
				w.Raw(c.Number())
				w.Key("unit")
				w.String(c.Unit)
				w.EndObject()
				_, err = a.out.Write(w.Bytes())
				return err
			}
			_, err = fmt.Fprintln(a.out, a.shown(fmt.Sprint(c)))
			return err
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, `write {"value": 54, "unit": "cu ft"}`)
	return cmd
}

// convertProblem reports what is wrong with the quantity or the unit in the
// same form as a job's problems.
func convertProblem(err error, unit string, asJSON bool) error {
	var e *units.Error
	if !errors.As(err, &e) {
		return err
	}
	path := "quantity"
	if e.Value == unit {
		path = "unit"
	}
	return &problems{err: doc.Quantity(path, e), json: asJSON, typed: true}
}
