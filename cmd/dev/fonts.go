package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font/sfnt"
)

const fontsPath = "rubrics/document/pdf/fonts"

// fontScripts are what papers can show: first and last character of each part.
var fontScripts = [][2]rune{
	{0x20, 0x7e}, {0xa0, 0x24f}, {0x2b0, 0x36f}, // Latin
	{0x370, 0x3ff}, {0x1f00, 0x1fff}, // Greek
	{0x400, 0x52f},                     // Cyrillic
	{0x531, 0x58f},                     // Armenian
	{0x591, 0x5f4},                     // Hebrew
	{0x600, 0x6ff},                     // Arabic
	{0x10a0, 0x10ff},                   // Georgian
	{0x1e00, 0x1eff},                   // Latin, Vietnamese among it
	{0x2000, 0x206f},                   // punctuation
	{0x2070, 0x20bf},                   // raised and lowered figures, currencies
	{0x2100, 0x218f}, {0x2190, 0x2199}, // units, fractions, arrows
	{0x2200, 0x2265}, // operators
	{0x2300, 0x2302}, // diameter
	{0x25a0, 0x25ff}, // shapes, the box of what is not covered
	{0x2610, 0x2612}, // boxes to tick
	{0x26a0, 0x26a1}, // warning, high voltage
	{0x2713, 0x2718}, // ticks
	{0xfb00, 0xfb4f}, // joined letters
	{0xfb50, 0xfdff}, // Arabic forms
	{0xfe70, 0xfefc}, // Arabic forms
	{0xfffd, 0xfffd}, // what was no character
}

// cutFonts are the faces of the papers, cut down to fontScripts.
func cutFonts() (map[string][]byte, error) {
	out := map[string][]byte{}
	for name, ttf := range map[string][]byte{"regular.ttf": dejavusanscondensed.TTF, "bold.ttf": dejavusanscondensedbold.TTF} {
		font, err := sfnt.Parse(ttf)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		var room sfnt.Buffer
		var have []rune
		for _, script := range fontScripts {
			for r := script[0]; r <= script[1]; r++ {
				if glyph, err := font.GlyphIndex(&room, r); err == nil && glyph != 0 {
					have = append(have, r)
				}
			}
		}
		out[name] = fpdf.UTF8CutFont(ttf, string(have))
	}
	return out, nil
}

// fonts writes the cut faces again.
func fonts(context.Context, []string) error {
	cut, err := cutFonts()
	if err != nil {
		return err
	}
	for _, name := range sorted(cut) {
		if err := os.WriteFile(filepath.Join(fontsPath, name), cut[name], 0o644); err != nil {
			return err
		}
	}
	return nil
}
