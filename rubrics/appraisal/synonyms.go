package appraisal

import (
	"strings"

	"asfound/rubrics/table"
)

// synonyms are the spellings of one id as table.Fold writes them, parted by bars,
// in English, German, Spanish and French.
type synonyms struct{ id, words string }

var conditionSynonyms = spellings([]synonyms{
	{"as_new", "as new|like new|excellent|mint|new|unused|near new|as_new|neuwertig|wie neu|neu|como nuevo|nuevo|excelente|comme neuf|neuf|excellent etat|tres bon etat"},
	{"sound", "sound|good|very good|used|working|works|works well|working order|good working order|good condition|used good|runs|operational|functional|serviceable|gut|sehr gut|guter zustand|gebraucht|funktioniert|funktionsfahig|bueno|muy bueno|buen estado|usado|funciona|bon|bon etat|occasion|d occasion|fonctionne|fonctionnel"},
	{"worn", "worn|fair|average|ok|okay|acceptable|used fair|well used|heavily used|verschlissen|abgenutzt|befriedigend|akzeptabel|regular|gastado|aceptable|use|usure|moyen|etat moyen|passable|correct"},
	{"bad", "bad|poor|parts|for parts|parts only|parts machine|needs work|needs repair|for repair|not working|does not work|non working|inoperable|broken|salvage|scrap|defekt|schlecht|reparaturbedurftig|ersatzteile|bastler|malo|averiado|para piezas|para reparar|no funciona|mauvais|mauvais etat|en panne|hs|pour pieces|a reparer"},
})

var basisSynonyms = spellings([]synonyms{
	{"asked", "asked|asking|asking price|ask|listed|listing|list|advertised|advert|ad|offer|offered|for sale|angebot|angeboten|inseriert|inserat|preisvorstellung|vb|pedido|en venta|anunciado|oferta|demande|a vendre|annonce|propose"},
	{"sold", "sold|sold price|paid|bought|purchased|hammer|hammer price|auction result|auction price|auction sale|realized|realised|verkauft|bezahlt|gekauft|zuschlag|vendido|pagado|comprado|subastado|vendu|paye|achete|adjuge"},
})

// soldSynonyms answer a column that asks whether a thing was sold.
var soldSynonyms = spellings([]synonyms{{"sold", "yes|y|x|true|1|ja|si|oui"}, {"asked", "no|n|false|0|nein|non"}})

var completeSynonyms = spellings([]synonyms{
	{"complete", "complete|yes|full|with accessories|all accessories|all there|komplett|vollstandig|ja|mit zubehor|completo|completa|si|complet|complete oui|oui"},
	{"bare", "bare|without its accessories|without accessories|no accessories|no tooling|ohne zubehor|sin accesorios|sans accessoires|nu"},
	{"missing", "missing|parts missing|missing parts|incomplete|unvollstandig|teile fehlen|fehlteile|incompleto|faltan piezas|incomplet|pieces manquantes"},
})

var hourWords = spellings([]synonyms{{"h", "h|hr|hrs|hour|hours|std|stunden|betriebsstunden|bh|hora|horas|heure|heures"}})

// unknown words say that a cell has nothing to say; a dash or question mark folds
// to nothing.
var unknownWords = spellings([]synonyms{{"", "|n a|na|unknown|unk|tbd|null|unbekannt|k a|desconocido|s d|inconnu|nc"}})

// maxUnknown is more bytes than any of the unknown words has.
const maxUnknown = 20

func spellings(all []synonyms) map[string]string {
	m := map[string]string{}
	for _, s := range all {
		for _, w := range strings.Split(s.words, "|") {
			m[w] = s.id
		}
	}
	return m
}

// known finds the id of a cell: of all its words, or of those before a comma,
// bracket or dash ("Good, runs well").
func known(words map[string]string, cell string) (id string, ok bool) {
	if id, ok = words[table.Fold(cell)]; ok {
		return id, true
	}
	head := cell
	if i := strings.IndexAny(head, ",;(:"); i >= 0 {
		head = head[:i]
	}
	head, _, _ = strings.Cut(head, " - ")
	id, ok = words[table.Fold(head)]
	return id, ok
}

// unsaid tells whether a cell leaves its field open.
func unsaid(cell string) bool {
	cell = strings.TrimSpace(cell)
	if cell == "" {
		return true
	}
	if len(cell) > maxUnknown || strings.ContainsAny(cell, "=@0123456789") {
		return false
	}
	_, ok := unknownWords[table.Fold(cell)]
	return ok
}
