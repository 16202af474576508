package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"

	"golang.org/x/image/font"
	"golang.org/x/image/font/basicfont"
	"golang.org/x/image/math/fixed"
)

const drawnWidth, drawnHeight = 960, 720

// drawing makes the demo's picture of a kind: an invented machine as a workshop
// sketch, marked as invented.
func drawing(kind, title string) (hash string, jpg []byte, err error) {
	paper, ink, faint := color.RGBA{236, 229, 210, 255}, color.RGBA{28, 46, 60, 255}, color.RGBA{120, 132, 138, 255}
	img := image.NewRGBA(image.Rect(0, 0, drawnWidth, drawnHeight))
	draw.Draw(img, img.Bounds(), image.NewUniform(paper), image.Point{}, draw.Src)
	box := func(x0, y0, x1, y1 int, c color.Color) {
		draw.Draw(img, image.Rect(x0, y0, x1, y1), image.NewUniform(c), image.Point{}, draw.Src)
	}
	for y := 40; y < drawnHeight; y += 40 {
		box(0, y, drawnWidth, y+1, color.RGBA{219, 210, 188, 255})
	}
	box(80, 600, 880, 612, ink)
	switch kind {
	case "h-frame-press":
		box(300, 140, 340, 600, ink)
		box(620, 140, 660, 600, ink)
		box(290, 140, 670, 190, ink)
		box(300, 430, 660, 466, ink)
		box(440, 190, 520, 300, faint)
		box(462, 300, 498, 360, ink)
	default:
		box(250, 120, 296, 600, ink)
		box(664, 120, 710, 600, ink)
		box(226, 590, 320, 600, faint)
		box(640, 590, 734, 600, faint)
		box(296, 380, 450, 402, faint)
		box(510, 380, 664, 402, faint)
		box(236, 340, 310, 440, faint)
		box(650, 340, 724, 440, faint)
	}
	label := func(y int, text string, c color.Color, scale int) {
		small := image.NewAlpha(image.Rect(0, 0, 7*len(text), 14))
		(&font.Drawer{Dst: small, Src: image.Opaque, Face: basicfont.Face7x13, Dot: fixed.P(0, 11)}).DrawString(text)
		for sy := range 14 {
			for sx := range 7 * len(text) {
				if small.AlphaAt(sx, sy).A > 0 {
					box(90+sx*scale, y+sy*scale, 90+(sx+1)*scale, y+(sy+1)*scale, c)
				}
			}
		}
	}
	label(24, "INVENTED FOR THE DEMO", color.RGBA{150, 30, 30, 255}, 3)
	if len(title) > 38 {
		title = title[:38]
	}
	label(640, title, ink, 3)
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: 82}); err != nil {
		return "", nil, err
	}
	sum := sha256.Sum256(out.Bytes())
	return hex.EncodeToString(sum[:]), out.Bytes(), nil
}
