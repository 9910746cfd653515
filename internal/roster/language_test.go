package roster

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"thenar/internal/hand"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// foreignHeadings holds headings as teachers of eight languages write them, by
// field (common practice, no source).
var foreignHeadings = map[string]map[string]string{
	"German": {
		fieldFirst: "Vorname", fieldLast: "Nachname", hand.FieldCircumference: "Handumfang|Umfang der Hand|Hand-Umfang|Rund um die Hand|Mittelhandumfang|Umfang der Hand ohne Daumen", hand.FieldWrist: "Handgelenkumfang|Handgelenksumfang|Umfang Handgelenk|Handgelenk",
		hand.FieldThumb: "Daumenumfang|Daumen|Umfang des Daumens", hand.FieldLength: "Handlänge|Länge der Hand", hand.FieldThumbLength: "Daumenlänge", hand.FieldBreadth: "Handbreite", hand.FieldPalm: "Hand mit Daumen",
		hand.FieldGussetLength: "Länge Daumenzwickel", hand.Index.FieldLength(): "Zeigefingerlänge|Länge des Zeigefingers", hand.Ring.FieldGirth(): "Ringfingerumfang|Umfang Ringfinger", hand.Ring.FieldCrotch(): "Handgelenk bis Ringfinger/Kleinfinger", hand.FieldWristToCrotch: "Handgelenk bis Daumen", hand.FieldSize: "Größe|Handschuhgröße",
		stitchesPath: "Maschen|Maschenprobe", roundsPath: "Runden|Reihen", "pins.cast_on": "Anschlag", fieldNote: "Bemerkung|Anmerkungen|Notizen", fieldName: "Name, Vorname|Vor- und Nachname", fieldKnits: "Strickrichtung",
	},
	"French": {
		fieldFirst: "Prénom", fieldLast: "Nom de famille", hand.FieldCircumference: "Tour de main|Tour de la main|Circonférence de la main", hand.FieldWrist: "Poignet|Tour de poignet|Tour du poignet",
		hand.Index.FieldGirth(): "Tour de l’index", hand.Middle.FieldLength(): "Longueur du majeur", hand.FieldThumb: "Pouce|Tour de pouce|Tour du pouce", hand.FieldLength: "Longueur de la main|Longueur main", hand.FieldThumbLength: "Longueur du pouce", hand.FieldBreadth: "Largeur de la main", hand.FieldPalm: "Main avec pouce",
		hand.FieldGussetLength: "Longueur du gousset", hand.FieldWristToCrotch: "Poignet au pouce", hand.FieldSize: "Taille|Taille de gant",
		stitchesPath: "Mailles|Échantillon|Nb de mailles", roundsPath: "Rangs|Tours", "pins.cast_on": "Montage", fieldNote: "Remarque|Remarques|Commentaires", fieldKnits: "Sens|De gauche à droite",
	},
	"Spanish": {
		fieldFirst: "Nombre", fieldLast: "Apellidos|Apellido", hand.FieldCircumference: "Contorno de mano|Contorno de la mano|Mano", hand.FieldWrist: "Muñeca|Contorno de muñeca",
		hand.Little.FieldLength(): "Largo del meñique", hand.FieldThumb: "Pulgar|Contorno del pulgar", hand.FieldLength: "Largo de la mano|Longitud de la mano", hand.FieldThumbLength: "Largo del pulgar", hand.FieldBreadth: "Ancho de la mano", hand.FieldPalm: "Mano con pulgar",
		hand.FieldWristToCrotch: "Muñeca hasta pulgar", hand.FieldSize: "Talla|Talla de guante", stitchesPath: "Puntos|Muestra", roundsPath: "Vueltas|Hileras|Pasadas", "pins.cast_on": "Montaje", fieldNote: "Nota|Observaciones|Comentarios", fieldKnits: "Dirección",
	},
	"Dutch": {
		fieldFirst: "Voornaam", fieldLast: "Achternaam", hand.FieldCircumference: "Handomtrek|Omtrek hand|Omtrek van de hand", hand.FieldWrist: "Pols|Polsomtrek|Omtrek pols", hand.FieldThumb: "Duim|Duimomtrek",
		hand.FieldLength: "Handlengte|Lengte hand", hand.FieldThumbLength: "Duimlengte", hand.FieldBreadth: "Handbreedte", hand.FieldPalm: "Hand met duim", hand.FieldWristToCrotch: "Pols tot duim", hand.FieldSize: "Maat|Handschoenmaat",
		stitchesPath: "Steken|Stekenverhouding", roundsPath: "Toeren|Rijen", "pins.cast_on": "Opzet", fieldNote: "Opmerking|Opmerkingen|Notities", fieldKnits: "Van links naar rechts|Breirichting",
	},
	"Danish": {
		fieldFirst: "Fornavn", fieldLast: "Efternavn", hand.FieldCircumference: "Håndomkreds|Omkreds hånd|Håndens omkreds", hand.FieldWrist: "Håndled|Håndledsomkreds|Omkreds håndled|Håndledets omkreds", hand.FieldThumb: "Tommelens omkreds|Tommelfinger|Tommelomkreds|Tommelfingeromkreds",
		hand.FieldLength: "Håndlængde", hand.FieldThumbLength: "Tommellængde|Tommelfingerlængde", hand.FieldBreadth: "Håndbredde", hand.FieldPalm: "Hånd med tommel", hand.FieldWristToCrotch: "Håndled til tommel", hand.FieldSize: "Størrelse|Handskestørrelse",
		stitchesPath: "Masker|Strikkefasthed", roundsPath: "Omgange|Pinde", "pins.cast_on": "Opslagning", fieldNote: "Bemærkning|Noter", fieldName: "Fulde navn", fieldKnits: "Fra venstre til højre",
	},
	"Norwegian": {
		fieldFirst: "Fornavn", fieldLast: "Etternavn", hand.FieldCircumference: "Håndomkrets|Omkrets hånd", hand.FieldWrist: "Håndledd|Håndleddsomkrets|Håndleddets omkrets", hand.FieldThumb: "Tommelens omkrets|Tommel|Tommelomkrets",
		hand.FieldLength: "Håndlengde", hand.FieldThumbLength: "Tommellengde", hand.FieldBreadth: "Håndbredde", hand.FieldPalm: "Hånd med tommel", hand.FieldWristToCrotch: "Håndledd til tommel", hand.FieldSize: "Størrelse|Hanskestørrelse",
		stitchesPath: "Masker|Strikkefasthet", roundsPath: "Omganger|Pinner", "pins.cast_on": "Opplegg", fieldNote: "Merknad|Kommentar|Notat|Notater", fieldName: "Fullt navn", fieldKnits: "Fra venstre til høyre",
	},
	"Swedish": {
		fieldFirst: "Förnamn", fieldLast: "Efternamn", hand.FieldCircumference: "Handomkrets|Handens omkrets|Handvidd|Handomfång", hand.FieldWrist: "Handledens omkrets|Handledets omkrets|Handledsomfång|Handled|Handledsomkrets", hand.FieldThumb: "Tumme|Tumomkrets|Tummens omkrets",
		hand.FieldLength: "Handlängd|Handens längd", hand.FieldThumbLength: "Tumlängd", hand.FieldBreadth: "Handbredd", hand.FieldPalm: "Hand med tumme", hand.FieldWristToCrotch: "Handled till tumme", hand.FieldSize: "Storlek|Handskstorlek",
		stitchesPath: "Maskor|Masktäthet", roundsPath: "Varv", "pins.cast_on": "Uppläggning", fieldNote: "Anmärkning|Kommentar|Anteckning|Anteckningar", fieldKnits: "Från vänster till höger",
	},
	"Finnish": {
		fieldFirst: "Etunimi", fieldLast: "Sukunimi", hand.FieldCircumference: "Käden ympärys|Kämmenen ympärys", hand.FieldWrist: "Ranne|Ranteen ympärys", hand.FieldThumb: "Peukalo|Peukalon ympärys",
		hand.FieldLength: "Käden pituus", hand.FieldThumbLength: "Peukalon pituus", hand.FieldBreadth: "Käden leveys", hand.FieldSize: "Koko|Käsineen koko", stitchesPath: "Silmukat|Tiheys", roundsPath: "Kierrokset", fieldNote: "Huomautus",
	},
}

// withoutAccents writes a heading as on a keyboard without its accents: left off,
// or spelt, ä as ae.
func withoutAccents(s string, spelt bool) string {
	if spelt {
		return strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue", "ß", "ss", "å", "aa", "æ", "ae", "ø", "oe", "Ä", "Ae", "Ö", "Oe", "Å", "Aa").Replace(s)
	}
	s = strings.NewReplacer("ß", "ss", "æ", "ae", "ø", "o", "Ø", "O", "å", "a").Replace(s)
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, norm.NFD.String(s))
}

// Headings in eight languages, with and without accents, in capitals, and with a
// unit.
func TestHeadingsOfOtherLanguages(t *testing.T) {
	for language, fields := range foreignHeadings {
		for field, list := range fields {
			for heading := range strings.SplitSeq(list, "|") {
				for _, written := range []string{heading, strings.ToUpper(heading), strings.ToLower(heading), withoutAccents(heading, false), heading + ":"} {
					assert.Equal(t, field, columnOf(written).Field, "%s: %s", language, written)
				}
				if language != "French" && language != "Spanish" { // their accents are never spelt
					assert.Equal(t, field, columnOf(withoutAccents(heading, true)).Field, "%s: %s", language, withoutAccents(heading, true))
				}
				c := Column{Field: field}
				if !c.isLength() {
					continue
				}
				for unit, texts := range map[units.Unit][]string{units.CM: {" (cm)", " in cm", " [cm]", ", cm", "/cm"}, units.MM: {" (mm)"}} {
					for _, text := range texts {
						got := columnOf(heading + text)
						assert.Equal(t, field, got.Field, "%s: %s", language, heading+text)
						assert.Equal(t, unit, got.Unit, heading+text)
					}
				}
			}
		}
	}
	for heading, over := range map[string]string{"Maschen auf 10 cm": "10", "Mailles sur 10 cm": "10", "Steken op 10 cm": "10", "Masker på 10 cm": "10", "Puntos en 10 cm": "10", "Maschenprobe (10 cm)": "10"} {
		c := columnOf(heading)
		assert.Equal(t, stitchesPath, c.Field, heading)
		assert.Equal(t, over, c.Over, heading)
	}
	for heading, unit := range map[string]units.Unit{"Handumfang (Zoll)": units.IN, "Tour de pouce (pouces)": units.IN, "Håndomkreds (tommer)": units.IN, "Contorno de mano (pulgadas)": units.IN} {
		assert.Equal(t, unit, columnOf(heading).Unit, heading)
	}
	for _, heading := range []string{"Telefon", "Adresse", "Schuhgröße", "Pointure des chaussures", "Bezahlt", "E-Mail", "Wolle", "Handarbeit seit", "Main droite ou gauche"} {
		assert.Empty(t, columnOf(heading).Field, heading)
	}
}

// An earlier version recognised only three columns of this table.
func TestGermanTable(t *testing.T) {
	table := read(t, "Name;Vorname;Handumfang (cm);Handgelenk (cm);Daumenumfang (cm);Handlänge (cm);Maschen (10 cm);Runden (10 cm);Bemerkung\n"+
		"Müller;Anna;18,5;15,5;6,2;17,8;24;32;linkshändig\nWeiß;Jörg;21;17,5;7;19,5;22;30;\n")
	require.Empty(t, table.Wrong)
	require.Len(t, table.Students, 2)
	assert.Equal(t, Student{Name: "Anna Müller", Note: "linkshändig", Sheet: map[string]string{
		"hand.hand_circumference": "18,5", "hand.wrist_circumference": "15,5", "hand.thumb_circumference": "6,2", "hand.hand_length": "17,8",
		"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
	}}, table.Students[0])
	assert.Equal(t, "Jörg Weiß", table.Students[1].Name)
	assert.Equal(t, []string{"18,5", "21"}, table.Samples[2])
}

// Random tables in all languages, some columns left out, some unknown: every value
// reaches the student of its row, in its field.
func TestTablesOfOtherLanguages(t *testing.T) {
	names := []string{"Ada", "Zoë", "Åse", "Jörg", "Íñigo"}
	for seed := range uint64(testenv.Cases(60, 600)) {
		r := rand.New(rand.NewPCG(seed, 7))
		for language, fields := range foreignHeadings {
			type column struct{ heading, field string }
			var columns []column
			for field, list := range fields {
				all := strings.Split(list, "|")
				if c := (Column{Field: field}); (c.isLength() || field == fieldFirst || field == fieldLast) && (r.IntN(4) > 0 || field == fieldFirst) {
					heading := all[r.IntN(len(all))]
					if r.IntN(2) == 0 {
						heading = withoutAccents(heading, false)
					}
					columns = append(columns, column{heading, field})
				}
			}
			columns = append(columns, column{"Telefon", ""})
			r.Shuffle(len(columns), func(i, j int) { columns[i], columns[j] = columns[j], columns[i] })
			values := map[string]string{ // of a possible hand
				hand.FieldCircumference: "19,5", hand.FieldWrist: "16,5", hand.FieldThumb: "6,5", hand.FieldLength: "18,5", hand.FieldThumbLength: "6,4",
				hand.FieldBreadth: "8,5", hand.FieldPalm: "23", hand.Index.FieldLength(): "7", hand.Ring.FieldGirth(): "5,8", hand.Ring.FieldCrotch(): "8,8", hand.Index.FieldGirth(): "6,2", hand.Middle.FieldLength(): "7,8", hand.Little.FieldLength(): "5,8", hand.FieldGussetLength: "6", hand.FieldWristToCrotch: "6,2",
			}
			var heads, cells []string
			want, first, last := map[string]string{}, names[r.IntN(len(names))], ""
			for _, c := range columns {
				cell := "+49 1"
				switch c.field {
				case fieldFirst:
					cell = first
				case fieldLast:
					cell, last = "van der Berg", " van der Berg"
				case "":
				default:
					cell = values[c.field]
					want[c.field] = cell
				}
				heads, cells = append(heads, c.heading), append(cells, cell)
			}
			text := strings.Join(heads, ";") + "\r\n" + strings.Join(cells, ";") + "\r\n"
			table := read(t, text)
			require.Empty(t, table.Wrong, "%s: %s", language, text)
			require.Equal(t, []Student{{Name: first + last, Sheet: want}}, table.Students, "%s: %s", language, text)
		}
	}
}

// A column is read as a person chose, even in a table without known headings. The
// class remembers choices, except those that agree with the heading.
func TestChosenColumnsAreRemembered(t *testing.T) {
	const text = "Imię;Obwód dłoni (mm);Kciuk;Telefon\nAda;185;6,5;1\nBo;190;6,2;2\n"
	table, err := ReadAs([]byte(text), units.CM, nil)
	require.Error(t, err)
	require.Len(t, table.Columns, 4, "there are columns to choose among")
	assert.Equal(t, []string{"185", "190"}, table.Samples[1])
	c := New("Tuesday")
	keys := make([]string, 4)
	for i := range table.Columns {
		keys[i] = table.Columns[i].Key()
	}
	c.Choose(map[string]string{keys[0]: fieldName, keys[1]: hand.FieldCircumference, keys[2]: hand.FieldThumb, keys[3]: ""})
	assert.Len(t, c.Columns, 3, "Telefon is unknown anyway")
	require.NoError(t, c.Check())
	table, err = ReadAs([]byte(strings.ToUpper(text)), units.CM, c.Columns)
	require.NoError(t, err)
	require.Len(t, table.Students, 2)
	assert.Equal(t, Student{Name: "ADA", Sheet: map[string]string{hand.FieldCircumference: "18.5", hand.FieldThumb: "6,5"}}, table.Students[0], "the unit of the heading holds")
	c.Choose(map[string]string{keys[1]: ""})
	assert.NotContains(t, c.Columns, keys[1])
	c.Choose(map[string]string{"hand": "", "wrist": hand.FieldWrist})
	assert.Equal(t, unused, c.Columns["hand"])
	assert.NotContains(t, c.Columns, "wrist")
	table, err = ReadAs([]byte("name,hand\nAda,wide\n"), units.CM, c.Columns)
	require.NoError(t, err)
	assert.Len(t, table.Students, 1, "unused columns are not read")
	assert.Equal(t, strings.Repeat("A B ", 10)+"…", keyOf(strings.Repeat("A B ", 1<<20), 0), "a cell of 4 MB is not split into words")
	c.Columns["x"] = "shoe"
	require.ErrorContains(t, c.Check(), "which is no field of a student")
}

// A table that is sent again fills empty values and returns what differs, without
// changing it.
func TestMergeFillsWhatIsEmpty(t *testing.T) {
	c := New("Tuesday")
	first := read(t, "name,hand,sts,note\nAda,18.5,24,\nBo,19,,wool\nCy,,22,\n")
	_, err := c.Add(first.Students...)
	require.NoError(t, err)
	second := read(t, "name,hand,thumb,sts,rows,note,gauge from\nADA,18½,6.5,24 sts over 5 cm,,,cuff\nbo,21,6,,,silk,\nCy,,,22,30,,\nDi,20,,,,,\nCy,18,,,,,\n")
	require.Empty(t, second.Wrong)
	m, err := c.Merge(second.Students)
	require.NoError(t, err)
	assert.Equal(t, 2, m.Added, "Di, and a second Cy")
	assert.Equal(t, 3, m.Filled)
	assert.Equal(t, []Difference{
		{1, "Ada", stitchesPath, "24 / 10", "24 / 5"}, {2, "Bo", hand.FieldCircumference, "19", "21"}, {2, "Bo", fieldNote, "wool", "silk"},
	}, m.Differ)
	assert.Equal(t, Student{ID: 1, Name: "Ada", Gauge: FromCuff, Sheet: map[string]string{hand.FieldCircumference: "18.5", hand.FieldThumb: "6.5", stitchesPath: "24", widthPath: "10"}}, c.Students[0])
	assert.Equal(t, "30", c.Students[2].Sheet[roundsPath])
	assert.Equal(t, "10", c.Students[2].Sheet[heightPath])

	for _, d := range m.Differ {
		require.True(t, c.Accept(d))
		assert.False(t, c.Accept(d), "the kept value has changed")
	}
	assert.Equal(t, "5", c.Students[0].Sheet[widthPath])
	assert.Equal(t, "21", c.Students[1].Sheet[hand.FieldCircumference])
	assert.Equal(t, "silk", c.Students[1].Note)
	assert.False(t, c.Accept(Difference{99, "x", fieldNote, "", "y"}))
	assert.False(t, c.Accept(Difference{1, "Ada", "kind", "", "mitten"}))
	assert.False(t, c.Accept(Difference{2, "Bo", hand.FieldThumb, "6", "30"}), "a thumb wider than the hand")

	again, err := c.Merge(second.Students)
	require.NoError(t, err)
	assert.Equal(t, Merged{Same: 5}, again, "merging twice changes nothing")
	bad, err := c.Merge([]Student{{Name: "Di", Sheet: map[string]string{hand.FieldThumb: "25"}}})
	require.NoError(t, err)
	require.Len(t, bad.Refused, 1)
	assert.Contains(t, fmt.Sprint(bad.Refused[0].Reasons), "not narrower than the hand")
}
