package appraisal

import (
	"sort"
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
)

// ImportFields are what a column can be, in the order they are shown.
var ImportFields = []Choice{
	{"title", "Title"}, {"price", "Price"}, {"basis", "Asked or sold"}, {"date", "Date of the price"}, {"maker", "Maker"}, {"made", "Year made"},
	{"hours", "Hours run"}, {"capacity", "Capacity"}, {"condition", "Condition"}, {"complete", "Completeness"}, {"place", "Place"},
	{"distance", "Distance"}, {"seen", "Where it was seen"}, {"note", "Note"},
}

// columnNames are the names that columns have, likeliest first, as table.Fold
// writes them. A name may be part of a longer one; after "=" it must be the whole
// name, after "?" also the cells must look like it.
var columnNames = map[string]string{
	"title": "title|item description|item name|lot title|description|=listing|=item|=name|=machine|=equipment|=lot|=ad|=what|titel|bezeichnung|beschreibung|=artikel|=anzeige|=maschine|" +
		"titulo|descripcion|=articulo|=equipo|=maquina|titre|designation|=article|=annonce|=materiel|?model",
	"price": "sold price|hammer price|price paid|price sold|selling price|sale price|asking price|price|amount|cost|=asking|=ask|=paid|=sold for|=usd|=eur|" +
		"verkaufspreis|kaufpreis|angebotspreis|preis|betrag|=zuschlag|precio|importe|prix|montant|prezzo|?sold|?asked|?value|?wert|?valor|?valeur",
	"basis": "price type|price basis|=basis|=sold or asked|=asked or sold|=sold asked|=asked sold|=asking sold|=sold asking|preisart|preisbasis|tipo de precio|type de prix|" +
		"?type|?status|?sold|?sale type|?kind|?art|?typ|?tipo|?estado|?statut|?etat",
	"date": "sale date|sold date|date sold|date of sale|sold on|auction date|date|=when|=day|=seen on|datum|verkaufsdatum|fecha|?sold|?month|?listed|?monat|?mes|?mois",
	"made": "year made|year built|model year|year of manufacture|date made|date built|year|=made|=built|=yr|=manufactured|=vintage|baujahr|=jahr|=bj|" +
		"ano de fabricacion|ano|annee de fabrication|annee",
	"hours":     "operating hours|run hours|hour meter|hours|hrs|hour|=h|betriebsstunden|stunden|horas|heures",
	"capacity":  "rated capacity|rated load|capacity|rating|tonnage|=rated|=size|load|tons|=ton|lbs|lb|kg|tragkraft|tragfahigkeit|kapazitat|presskraft|nennlast|capacidad|tonelaje|capacite|charge|=force|=swing",
	"maker":     "maker|manufacturer|=make|brand|=mfr|=mfg|=builder|hersteller|=marke|fabricante|=marca|fabricant|=marque",
	"condition": "condition|=grade|=cond|=shape|zustand|condicion|=estado|=etat|?state|?quality",
	"complete":  "completeness|complete|accessories|=tooling|vollstandigkeit|vollstandig|zubehor|completo|accesorios|complet|accessoires",
	"place":     "location|place|=city|=town|=where|=region|=zip|=address|=country|standort|ort|=stadt|ubicacion|lugar|=ciudad|emplacement|lieu|=ville|?state",
	"distance":  "distance|miles|=mi|=km|entfernung|distanz|distancia|=millas|=kilometers|=kilometres",
	"seen":      "listing url|where seen|seen at|=seen|url|link|source|website|=web|=site|=href|=platform|=marketplace|=auction house|quelle|fuente|=enlace|=origen|lien|=origine",
	"note": "notes|note|comments|comment|remarks|remark|bemerkungen|bemerkung|notizen|notiz|anmerkung|notas|nota|comentarios|comentario|observaciones|" +
		"remarques|remarque|commentaires|commentaire|=details|=text|?description|?beschreibung|?descripcion",
}

// otherThings are words with which a name means something else than the field.
var otherThings = map[string]string{
	"price":    "new list msrp retail neu neupreis nuevo neuf shipping freight delivery transport tax per fee fees premium reserve estimate low high starting opening start type basis repair notes",
	"date":     "built made manufacture manufactured",
	"made":     "sold sale",
	"hours":    "per",
	"capacity": "weight gewicht peso poids shipping distance price",
	"title":    "url link",
	"distance": "per price",
}

// columnsOf finds which column each field is read from: what was chosen, then
// what the names and cells look like, the surest first, no column twice.
func columnsOf(r *Rubric, t *table.Table, chosen map[string]string) (map[string]int, error) {
	at, used := map[string]int{}, map[int]string{}
	for _, field := range sortedKeys(chosen) {
		if err := oneOf("columns", field, ImportFields); err != nil || field == "" {
			return nil, refuse(step("columns", field), say.Later("one of %s", ids(ImportFields)), "no field is named so")
		}
		name := chosen[field]
		if name == "" {
			continue
		}
		i := indexOf(t.Columns, name)
		if i < 0 {
			return nil, refuse(step("columns", field), "one of the names in the first line", "no column is named %.40q", name)
		}
		if other, twice := used[i]; twice {
			return nil, refuse(step("columns", field), "choose another column, or none", "the column %.40q is %s already", name, other)
		}
		at[field], used[i] = i, field
	}
	type guess struct{ field, column, score int }
	var guesses []guess
	folded := make([]string, len(t.Columns))
	for i, name := range t.Columns {
		folded[i] = table.Fold(name)
	}
	for k, f := range ImportFields {
		if _, said := chosen[f.ID]; said {
			continue
		}
		names := columnNames[f.ID]
		if f.ID == "capacity" {
			names = table.Fold(r.Capacity.Title) + "|" + names
		}
		list := strings.Split(names, "|")
		for i := range t.Columns {
			if _, taken := used[i]; taken || meansOther(f.ID, folded[i]) {
				continue
			}
			if score := likeness(list, folded[i], f.ID, t, i); score > 0 {
				guesses = append(guesses, guess{k, i, score})
			}
		}
	}
	sort.SliceStable(guesses, func(a, b int) bool { return guesses[a].score > guesses[b].score })
	for _, g := range guesses {
		field := ImportFields[g.field].ID
		if _, done := at[field]; done {
			continue
		}
		if _, taken := used[g.column]; !taken {
			at[field], used[g.column] = g.column, field
		}
	}
	return at, nil
}

func ids(choices []Choice) string {
	out := make([]string, len(choices))
	for i, c := range choices {
		out[i] = c.ID
	}
	return strings.Join(out, ", ")
}

func indexOf(all []string, s string) int {
	for i := range all {
		if all[i] == s {
			return i
		}
	}
	return -1
}

func meansOther(field, name string) bool {
	other := strings.Fields(otherThings[field])
	for _, w := range strings.Fields(name) {
		if indexOf(other, w) >= 0 {
			return true
		}
	}
	return false
}

// likeness is how surely a column is a field, 0 for not at all: a whole name
// before a part of one before a look at the cells, an earlier name before a later.
func likeness(names []string, column, field string, t *table.Table, i int) int {
	best := 0
	for k, name := range names {
		bare := strings.TrimLeft(name, "=?")
		score := 0
		switch {
		case bare == "":
		case bare == column && name[0] == '?':
			if looks, can := looksLike(field, t, i); looks && can {
				score = 300
			} else if looks {
				score = 200
			}
		case bare == column:
			score = 900
		case name[0] != '=' && name[0] != '?' && strings.Contains(" "+column+" ", " "+bare+" "):
			if looks, _ := looksLike(field, t, i); looks {
				score = 600
			}
		}
		if score > 0 {
			best = max(best, score-k)
		}
	}
	return best
}

// looked is how many cells are looked at to tell what a column holds.
const looked = 50

// looksLike tells whether at least half the cells of a column could be of a
// field, and whether that can be told at all.
func looksLike(field string, t *table.Table, i int) (looks, can bool) {
	fits, all := 0, 0
	for _, row := range t.Rows {
		cell := row[i]
		if unsaid(cell) {
			continue
		}
		ok := true
		switch field {
		case "price":
			_, err := table.Number(cell, false)
			_, other := table.Number(cell, true)
			ok = err == nil || other == nil || strings.HasPrefix(cell, "=")
		case "date":
			_, err := table.Date(cell, true)
			_, other := table.Date(cell, false)
			ok = err == nil || other == nil
		case "made":
			_, err := yearMade(cell, false)
			ok = err == nil
		case "hours", "capacity", "distance":
			n, _ := parted(cell)
			ok = n != ""
		case "condition":
			_, ok = known(conditionSynonyms, cell)
		case "basis":
			_, ok = known(basisSynonyms, cell)
			if !ok {
				_, ok = soldSynonyms[table.Fold(cell)]
			}
		default:
			return true, false
		}
		if ok {
			fits++
		}
		if all++; all == looked {
			break
		}
	}
	return 2*fits >= all, true
}
