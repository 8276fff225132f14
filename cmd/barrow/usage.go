package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/barrow/units/spell"
)

// commandError puts cobra's error about a word that is no command in our words, with
// the command that may have been meant.
func commandError(root *cobra.Command, err error) error {
	if err == nil {
		return nil
	}
	rest, unknown := strings.CutPrefix(err.Error(), "unknown command ")
	if !unknown {
		return err
	}
	var word, path string
	if n, _ := fmt.Sscanf(rest, "%q for %q", &word, &path); n != 2 {
		return err
	}
	of, _, findErr := root.Find(strings.Fields(path)[1:])
	if findErr != nil || of.HasParent() && !of.HasSubCommands() {
		return fmt.Errorf("%q has no place after %s", word, path)
	}
	var names []string
	for _, c := range of.Commands() {
		names = append(names, c.Name())
	}
	if meant := spell.Word(word, names); meant != "" {
		return fmt.Errorf("%s has no command %q; did you mean %s %s?", path, word, path, meant)
	}
	return fmt.Errorf("%s has no command %q", path, word)
}

// flagError puts an error of package pflag in our words, with the flag that may have
// been meant.
func flagError(cmd *cobra.Command, err error) error {
	if e, ok := errors.AsType[*pflag.NotExistError](err); ok {
		return unknownFlag(cmd, e)
	}
	if e, ok := errors.AsType[*pflag.ValueRequiredError](err); ok {
		name := e.GetFlag().Name
		what, _ := pflag.UnquoteUsage(e.GetFlag())
		return fmt.Errorf("--%s has nothing after it: write --%s %s", name, name, what)
	}
	if e, ok := errors.AsType[*pflag.InvalidValueError](err); ok {
		name := e.GetFlag().Name
		if e.GetFlag().Value.Type() == "bool" {
			return fmt.Errorf("--%s stands alone, without %q", name, e.GetValue())
		}
		return fmt.Errorf("--%s %q: write a whole number from 0 to 65535", name, e.GetValue())
	}
	if e, ok := errors.AsType[*pflag.InvalidSyntaxError](err); ok {
		return fmt.Errorf("%q is not how a flag is written", e.GetSpecifiedFlag())
	}
	return err
}

// unknownFlag names the flag that the command does not have. One dash with a word after
// it is a flag too, to the one who typed it.
func unknownFlag(cmd *cobra.Command, e *pflag.NotExistError) error {
	word, dashes := e.GetSpecifiedName(), "--"
	if short := e.GetSpecifiedShortnames(); short != "" {
		word, dashes = short, "-"
	}
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	meant := spell.Word(word, names)
	if meant == "" {
		return fmt.Errorf("%s has no flag %s%s", cmd.CommandPath(), dashes, word)
	}
	return fmt.Errorf("%s has no flag %s%s; did you mean --%s?", cmd.CommandPath(), dashes, word, meant)
}

// atMostOne allows one word after the command, which what says.
func atMostOne(what string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) > 1 {
			return fmt.Errorf("one %s at a time: %q is one more", what, args[1])
		}
		return nil
	}
}
