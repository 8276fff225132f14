package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/barrow/mix/lang"
)

// short writes a language file as the page downloads it: keys in place of the
// English, which the page and the program have. mix/lang and web/text/say.js read
// either.
func short(source []byte) ([]byte, error) {
	if _, err := lang.Parse(source); err != nil {
		return nil, err
	}
	var named struct {
		Language      string
		Decimal       string
		Page, Library map[string]string
	}
	if err := json.Unmarshal(source, &named); err != nil {
		return nil, err
	}
	page, err := keyed(named.Page)
	library, err2 := keyed(named.Library)
	if err := errors.Join(err, err2); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	err = e.Encode(struct {
		Language string   `json:"language"`
		Decimal  string   `json:"decimal,omitempty"`
		Page     []string `json:"page"`
		Library  []string `json:"library"`
	}{named.Language, named.Decimal, page, library})
	return out.Bytes(), err
}

// keyed is all keys in one string, then the texts in the same order.
func keyed(texts map[string]string) ([]string, error) {
	var keys strings.Builder
	list := []string{""}
	of := map[uint32]string{}
	for _, english := range slices.Sorted(maps.Keys(texts)) {
		key := lang.Key(english)
		if other, taken := of[key]; taken {
			return nil, fmt.Errorf("%q and %q have one key: word one of them otherwise", other, english)
		}
		of[key] = english
		fmt.Fprintf(&keys, "%06x", key)
		list = append(list, texts[english])
	}
	list[0] = keys.String()
	return list, nil
}
