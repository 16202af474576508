package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"sync"

	"asfound/rubrics/document/form"
)

// samplePhoto is an invented picture of about 40 kB, another for each number.
var samplePhoto = func() func(n int) []byte {
	var lock sync.Mutex
	made := map[int][]byte{}
	return func(n int) []byte {
		lock.Lock()
		defer lock.Unlock()
		if made[n] == nil {
			w, h := 800, 600
			if n%5 == 4 {
				w, h = 600, 800
			}
			made[n] = photoOf(n, w, h)
		}
		return made[n]
	}
}()

func photoOf(n, w, h int) []byte {
	random := rand.New(rand.NewPCG(uint64(n), 7))
	picture := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			shade := uint8(90 + 60*((x/80+y/60+n)%2) + random.IntN(9))
			copy(picture.Pix[picture.PixOffset(x, y):], []byte{shade, shade + uint8(n*7%40), 160 - shade/3, 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, &jpeg.Options{Quality: 60}); err != nil {
		panic(err)
	}
	return out.Bytes()
}

func sampleKey(n int) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "invented %d", n))
	return hex.EncodeToString(sum[:])
}

// samplePhotos answers for the keys of n photos.
func samplePhotos(n int) func(string) []byte {
	keys := map[string]int{}
	for i := range n {
		keys[sampleKey(i)] = i
	}
	return func(key string) []byte {
		if i, ok := keys[key]; ok {
			return samplePhoto(i)
		}
		return nil
	}
}

// words of an invented estimate in two languages.
type sampleWords struct {
	title, date, foot, page, absent, warning, warn, lead string
	line, part, labour, found, how, sum, each, photo     string
}

var sampleEnglish = sampleWords{
	"Repair estimate: two-post lift, 9,000 lb, invented for a demonstration", "October 3, 2026",
	"Invented example. What a buyer saw on one day, without load and without taking anything apart. It says nothing on whether the equipment may be used: the maker's manual and a qualified inspector decide.",
	"Page %s of %s", "This photo is not on the device that made the paper.",
	"WARNING", "A lift that was not inspected by a qualified person may drop its load. Do not stand under it, and do not lift with it, until it was inspected.",
	"Each line tells what was seen, what it takes to put it right, and the sum. Answer line by line: agree, disagree, or already done.",
	"Equalizer cable worn beyond its limit, left column", "Cable set", "Labour, 3.5 h at $95.00", "Seen", "Put right by", "Sum", "together", "Left column, where the cable runs over the lower sheave",
}

var sampleSpanish = sampleWords{
	"Presupuesto de reparación: elevador de dos columnas, 4.000 kg, inventado para una demostración", "3 de octubre de 2026",
	"Ejemplo inventado. Lo que vio un comprador en un día, sin carga y sin desmontar nada. No dice si el equipo se puede usar: lo deciden el manual del fabricante y un inspector calificado.",
	"Página %s de %s", "Esta foto no está en el dispositivo que hizo el papel.",
	"ADVERTENCIA", "Un elevador que no fue inspeccionado por una persona calificada puede dejar caer la carga. No se ponga debajo ni levante nada con él hasta que haya sido inspeccionado.",
	"Cada renglón dice qué se vio, qué hace falta para corregirlo y la suma. Conteste renglón por renglón: de acuerdo, en desacuerdo o ya hecho.",
	"Cable de nivelación gastado más allá de su límite, columna izquierda", "Juego de cables", "Mano de obra, 3,5 h a 95,00 $", "Se vio", "Se corrige con", "Suma", "en total", "Columna izquierda, donde el cable pasa por la polea inferior",
}

// sampleEstimate is an invented estimate of some lines, with photos spread over them.
func sampleEstimate(w sampleWords, language string, lines, photos int) form.Document {
	d := form.Document{Kind: "estimate", Language: language, Title: w.title, Date: w.date, Foot: w.foot, Page: w.page, Absent: w.absent}
	d.Blocks = []form.Block{
		{Kind: "facts", Facts: []form.Fact{{Name: "Equipment", Value: "Two-post lift, asymmetric, 9,000 lb"}, {Name: "Serial number", Value: "A-0000-EXAMPLE"}, {Name: "Year", Value: "2011"}, {Name: "Asking price", Value: "$2,400"}, {Name: "Looked at", Value: w.date + ", 55 of 58 points; three could not be reached because the lift stood against the wall and its power was off"}}},
		{Kind: "caution", Signal: "warning", Word: w.warning, Text: w.warn},
		{Kind: "text", Text: w.lead},
		{Kind: "heading", Level: 1, Text: w.sum},
		{Kind: "table", Table: &form.Table{Title: w.sum, Columns: []form.Column{{Title: w.found, Share: 46}, {Title: w.how, Share: 34}, {Title: w.sum, Share: 20, Right: true}}}},
	}
	t := d.Blocks[4].Table
	for i := range lines {
		if i%8 == 0 {
			t.Rows = append(t.Rows, form.Row{Kind: "group", Cells: []string{fmt.Sprintf("Section %c", 'A'+i/8)}})
		}
		t.Rows = append(t.Rows, form.Row{Cells: []string{fmt.Sprintf("%d. %s", i+1, w.line), w.part, fmt.Sprintf("$%d.50", 120+17*i)}})
	}
	t.Rows = append(t.Rows, form.Row{Kind: "total", Cells: []string{w.together(), "", "$12,345.00"}})
	d.Blocks = append(d.Blocks, form.Block{Kind: "heading", Level: 1, Text: w.found})
	next := 0
	for i := range lines {
		part := form.Block{Kind: "part", ID: fmt.Sprintf("line-%d", i), Answer: true, Blocks: []form.Block{
			{Kind: "heading", Level: 2, Text: fmt.Sprintf("%d. %s", i+1, w.line)},
			{Kind: "text", Text: w.lead},
			{Kind: "table", Table: &form.Table{Title: w.line, Columns: []form.Column{{Title: w.how, Share: 70}, {Title: w.sum, Share: 30, Right: true}}, Rows: []form.Row{
				{Cells: []string{w.part, fmt.Sprintf("$%d.00", 80+i)}}, {Cells: []string{w.labour, "$332.50"}}, {Kind: "total", Cells: []string{w.together(), fmt.Sprintf("$%d.50", 412+i)}}}}},
		}}
		var list []form.Photo
		for next < photos*(i+1)/lines {
			list = append(list, form.Photo{Key: sampleKey(next), Caption: fmt.Sprintf("%d. %s", next+1, w.photo), Pair: i%6 == 5 && len(list) == 0 && photos*(i+1)/lines-next > 1})
			next++
		}
		if i == 1 {
			list = append(list, form.Photo{Key: "gone", Caption: w.photo, Missing: true})
		}
		if len(list) > 0 {
			part.Blocks = append(part.Blocks, form.Block{Kind: "photos", Photos: list})
		}
		d.Blocks = append(d.Blocks, part)
	}
	return d
}

func (w sampleWords) together() string { return w.sum + ": " + w.each }
