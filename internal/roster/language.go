package roster

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// languages maps English words of the synonyms to those of headings in German,
// French, Spanish, Dutch, Danish, Norwegian, Swedish and Finnish (common
// practice, no source). They are written as fold leaves them.
var languages = map[string]string{
	"hand":       "main mano mittelhand handens handen haanden kammen kammenen kasi kaden",
	"wrist":      "handgelenk handgelenks poignet muneca pols polsen handled handleds handleden handledd handledds handleddet handledet handledens handledets handleddets ranne ranteen",
	"thumb":      "daumen daumens pouce pulgar duim duimen tommel tommelen tommels tommelens tommelfinger tommelfingeren tommelfingerens tumme tummen tummens peukalo peukalon",
	"length":     "lange longueur largo longitud lengte langde lengde langd pituus",
	"breadth":    "breite largeur ancho anchura breedte bredde bredd leveys",
	"girth":      "umfang tour contorno circonference circunferencia omtrek omkreds omkrets ymparys ymparysmitta vidd omfang circonf",
	"size":       "grosse taille talla maat storrelse storlek koko",
	"glove":      "handschuh gant gants guante guantes handschoen handske handsker handsk handskar hanske hansker kasine kasineen",
	"knuckles":   "knochel fingerknochel nudillos jointures knokkels knoer knoker knogar rystyset",
	"round":      "rund rond rundt runt autour alrededor",
	"with":       "mit avec con met med kanssa",
	"without":    "ohne sans sin zonder uden uten utan ilman",
	"to":         "bis au tot til till hasta nach naar",
	"from":       "von fra fran desde",
	"and":        "und et y og och ja",
	"gusset":     "zwickel daumenzwickel spickel gousset soufflet cuna kile tommelkile tumkil kiila spie duimspie",
	"sts":        "maschen mailles maille puntos punto steken masker maskor silmukat silmukkaa",
	"gauge":      "maschenprobe echantillon muestra proeflapje stekenverhouding strikkefasthed strikkefasthet strikkeprove masktathet stickfasthet tiheys neuletiheys",
	"rows":       "runden reihen rangs tours vueltas pasadas filas hileras rijen toren omgange omganger pinde pinner varv rader kierrokset kerrokset",
	"cast on":    "anschlag maschenanschlag anschlagmaschen montage montaje opzet opslagning opslag opplegg upplaggning luominen",
	"cuff":       "bundchen puno boord ribkant vrangbord mudd resori",
	"note":       "bemerkung bemerkungen anmerkung anmerkungen notiz notizen remarque remarques nota notas observacion observaciones opmerking opmerkingen bemarkning bemarkninger merknad merknader anmarkning anmarkningar kommentar kommentarer commentaire commentaires comentario comentarios notitie notities noter notat notater anteckning anteckningar huomautus",
	"name":       "nom naam navn namn nimi",
	"initials":   "initialen initiales iniciales initialer nimikirjaimet",
	"student":    "schuler schulerin teilnehmer teilnehmerin eleve alumno alumna leerling cursist elev deltager deltaker deltagare oppilas osallistuja",
	"first name": "vorname prenom nombre voornaam fornavn fornamn etunimi",
	"surname":    "nachname familienname apellido apellidos achternaam familienaam efternavn etternavn efternamn sukunimi",
	"family":     "famille",
	"full":       "fulde fullt fullstandigt vollstandiger volledige",
	"direction":  "strickrichtung richtung sens direccion breirichting retning strikkeretning riktning suunta",
	"knits":      "strickt tricote teje breit strikker stickar neuloo",
	"left":       "links gauche izquierda venstre vanster vasemmalta",
	"right":      "rechts droite derecha hojre hoyre hoger oikealle",
	"index":      "zeigefinger zeigefingers indice wijsvinger pegefinger pekefinger pekfinger etusormi etusormen",
	"middle":     "mittelfinger mittelfingers majeur medio middelvinger langfinger keskisormi keskisormen",
	"ring":       "ringfinger ringfingers annulaire anular ringvinger nimeton nimettoman",
	"little":     "kleinfinger kleinfingers auriculaire menique pink lillefinger lillfinger pikkusormi pikkusormen",
	"fingertip":  "fingerspitze fingertop fingerspids fingertupp sormenpaa",
}

// fillers are words that add no meaning to a heading in those languages.
var fillers = strings.Fields(fold("der die das des dem den um auf ihr ihre ca la le les de du l d sur en el los las del al por het een van op om pa af av pr pro i nb"))

// endings are the second halves of compounds: Handumfang, handomtrek,
// tommellængde.
var endings = strings.Fields(fold("umfang lange breite grosse omtrek lengte breedte maat omkreds langde bredde storrelse omkrets vidd omfang lengde langd bredd storlek ymparys pituus leveys koko runden reihen maschen"))

// english maps each word of languages to its English words.
var english = func() map[string][]string {
	all := map[string][]string{"tum": {"thumb"}} // only as the first half of a compound
	for means, list := range languages {
		for w := range strings.FieldsSeq(list) {
			all[fold(w)] = strings.Fields(means)
		}
	}
	return all
}()

// inEnglish translates a folded word of a heading into English words; an unknown
// word stays as it is.
func inEnglish(w string) []string {
	if means, ok := english[w]; ok && w != "tum" {
		return means
	}
	for _, end := range endings {
		first, joined := strings.CutSuffix(w, end)
		if !joined || first == "" {
			continue
		}
		for _, stem := range []string{first, strings.TrimSuffix(first, "s")} {
			if stem == "hand" {
				return append([]string{"hand"}, english[end]...)
			}
			if means, ok := english[stem]; ok {
				return append(append([]string{}, means...), english[end]...)
			}
		}
	}
	return []string{w}
}

// plainLetters replaces letters whose mark is no accent to Unicode (ø, ß), and
// the ways of spelling accents without them (ae for ä).
var plainLetters = strings.NewReplacer("ß", "ss", "ø", "o", "æ", "a", "œ", "o", "ł", "l", "ð", "d", "þ", "th", "ae", "a", "oe", "o", "ue", "u", "aa", "a")

// fold returns a text in lower case without accents: Länge, Laenge and LANGE
// become one word, as do længde and laengde.
func fold(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, norm.NFD.String(strings.ToLower(s)))
	return plainLetters.Replace(s)
}
