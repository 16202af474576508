package seller

import (
	"strings"

	"asfound/rubrics/say"
)

// words are what the page says of itself, where the document has no words for it.
type words struct {
	TooMany   string
	TooManyP  string // photos
	Busy      string
	NotStored string
	Photo     string // another picture of an answer, for readers that cannot see it
	Missing   string // a photo that was not at hand
	Choices   string
	signals   map[string]string
	months    []string
}

var languages = map[string]*words{
	"en": {
		TooMany:   "No more answers can be taken over this page. What was sent before is kept.",
		TooManyP:  "No more photos can be taken over this page. Send the answer without one.",
		Busy:      "Too much is being sent right now. What you wrote is still here: send it again in a minute.",
		NotStored: "This could not be kept. What you wrote is still here: send it again.",
		Photo:     "Your photo",
		Missing:   "This photo is not at hand.",
		Choices:   "Your answer",
		signals:   map[string]string{"danger": "DANGER", "warning": "WARNING", "caution": "CAUTION", "notice": "NOTICE"},
	},
	"es": {
		TooMany:   "Ya no se reciben más respuestas en esta página. Lo enviado antes queda guardado.",
		TooManyP:  "Ya no se reciben más fotos en esta página. Envíe la respuesta sin foto.",
		Busy:      "En este momento se está enviando demasiado. Lo que escribió sigue aquí: envíelo de nuevo en un minuto.",
		NotStored: "Esto no se pudo guardar. Lo que escribió sigue aquí: envíelo de nuevo.",
		Photo:     "Su foto",
		Missing:   "Esta foto no está disponible.",
		Choices:   "Su respuesta",
		signals:   map[string]string{"danger": "PELIGRO", "warning": "ADVERTENCIA", "caution": "ATENCIÓN", "notice": "AVISO"},
		months:    []string{"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"},
	},
}

var englishMonths = []string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// wordsOf finds the words of a language, English where there are none.
func wordsOf(tag string) *words {
	language, _, _ := strings.Cut(strings.ToLower(tag), "-")
	if w := languages[language]; w != nil {
		return w
	}
	return languages["en"]
}

// voice writes dates as the language does.
func voice(tag string) *say.Voice {
	names := map[string]string{}
	for i, month := range wordsOf(tag).months {
		names[englishMonths[i]] = month
	}
	return say.New(say.Nearest(tag), names)
}

// direction is how a language is written.
func direction(tag string) string {
	language, _, _ := strings.Cut(strings.ToLower(tag), "-")
	switch language {
	case "ar", "arc", "ckb", "dv", "fa", "ha", "he", "iw", "ks", "ps", "sd", "ug", "ur", "yi":
		return "rtl"
	}
	return "ltr"
}
