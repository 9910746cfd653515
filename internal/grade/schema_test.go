package grade

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// The schema of a design names every part of a sheet, and every number that can keep to a
// multiple.
func TestDesignSchemaHasEveryKey(t *testing.T) {
	var design, whole struct {
		Properties map[string]struct {
			Properties map[string]struct {
				Ref           string `json:"$ref"`
				PropertyNames struct {
					Enum []string `json:"enum"`
				} `json:"propertyNames"`
			} `json:"properties"`
		} `json:"properties"`
	}
	for name, to := range map[string]any{"design.schema.json": &design, "sheet.schema.json": &whole} {
		raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", name))
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(raw, to))
	}
	parts := design.Properties["sheet"].Properties
	require.Len(t, parts, len(whole.Properties))
	for key := range whole.Properties {
		require.Contains(t, parts, key)
		if key != "hand" {
			require.Equal(t, "sheet.schema.json#/properties/"+key, parts[key].Ref)
		}
	}
	require.Equal(t, multiplesOf(), design.Properties["rules"].Properties["multiples"].PropertyNames.Enum)
}

// At every key of a design, schema and parser agree on every value: what the schema refuses
// is no design, by an independent library (santhosh-tekuri/jsonschema), and what it takes
// is not refused at its key.
func TestDesignSchemaAgreesWithTheParser(t *testing.T) {
	s := testenv.Schema(t, "design.schema.json", "sheet.schema.json")
	const whole = `{"format": FORMAT, "sheet": SHEET, "sizes": SIZES, "rules": RULES, "pins": PINS, "extra": EXTRA}`
	usual := map[string]string{
		"FORMAT": `"thenar/design@1"`, "SHEET": `{"gauge": {"swatches": [{"stitches": 24, "width": 10}]}, "hand": {"size": 8}}`, "SIZES": `[{"name": "7", "hand": {"size": 7}}]`,
		"RULES": "", "PINS": "", "EXTRA": "",
	}
	values := []string{
		"null", "true", `""`, `" "`, `"7"`, `"wide"`, "0", "-1", "1", "2", "6", "9", "100", "101", "0.5", "10000", "10001", "{}", "[]", "[{}]", "[6]", "[6, 1]", "[6, 0]", "[0, 0]", "[101, 0]", "[6, -1]", "[6, 1, 1]", `["6", "1"]`,
		`"thenar/design@1"`, `"in_proportion"`, `"fixed"`, `{"size": 7}`, `{"size": "7"}`, `{"hand_circumference": 19}`, `{"hand_circumference": "7 1/2"}`, `{"colour": 1}`,
		`{"swatches": [{"stitches": 28, "width": 10}]}`, `{"swatches": []}`, `{"gusset_base": 4}`, `{"gusset_base": 9}`, `{"gusset_base": "4"}`, `{"rhythm": [3, 4]}`, `{"hand_stitches": 4}`,
		`"all"`, `"a (b)"`, `"a:b"`, `"a, b"`, `"S and M"`, `"sandy"`, `"twelve chars"`, `"thirteen char"`, `" twelve chars "`, `"6½"`, `"a\tb"`, `"ÄÖÜäöüßÄÖÜäö"`,
	}
	shapes := map[string]string{ // where a value stands, and the path at which it is refused
		"FORMAT": "format", "SHEET": "sheet", "SHEET {\"hand\": X}": "sheet.hand", "SHEET {\"gauge\": X}": "sheet.gauge", "SHEET {\"kind\": X}": "sheet.kind", "SHEET {\"colour\": X}": "sheet.colour",
		"SIZES": "sizes", "SIZES [X]": "sizes[0]", "SIZES [{\"name\": X, \"hand\": {\"size\": 7}}]": "sizes[0].name", "SIZES [{\"name\": \"7\", \"hand\": X}]": "sizes[0].hand",
		"SIZES [{\"name\": \"7\", \"hand\": {\"size\": 7}, \"gauge\": X}]": "sizes[0].gauge", "SIZES [{\"name\": \"7\", \"hand\": {\"size\": 7}, \"colour\": X}]": "sizes[0].colour",
		"RULES": "rules", "RULES {\"length\": X}": "rules.length", "RULES {\"price_mm2\": X}": "rules.price_mm2", "RULES {\"multiples\": X}": "rules.multiples",
		"RULES {\"multiples\": {\"hand_stitches\": X}}": "rules.multiples.hand_stitches", "RULES {\"multiples\": {\"top_rounds\": X}}": "rules.multiples.top_rounds", "RULES {\"multiples\": {\"held\": X}}": "rules.multiples.held",
		"RULES {\"colour\": X}": "rules.colour", "PINS": "pins", "PINS {\"all\": X}": "pins.all", "PINS {\"7\": X}": "pins.7", "EXTRA": "extra",
	}
	taken, refused := 0, 0
	for shape, path := range shapes {
		part, of, _ := strings.Cut(shape, " ")
		if of == "" {
			of = "X"
		}
		for _, value := range values {
			doc := whole
			for name, text := range usual {
				if name == part {
					text = strings.Replace(of, "X", value, 1)
				}
				if text == "" {
					doc = strings.Replace(doc, fmt.Sprintf(`, %q: %s`, strings.ToLower(name), name), "", 1)
					continue
				}
				doc = strings.Replace(doc, name, text, 1)
			}
			schema := testenv.Validate(t, s, []byte(doc))
			d, err := ParseDesign([]byte(doc))
			if err == nil {
				_, err = d.Sheets()
			}
			if schema != nil {
				refused++
				require.Error(t, err, "the schema refuses %s at %s, the parser does not: %v", value, path, schema)
				continue
			}
			taken++
			if err != nil {
				require.NotContains(t, "\n"+err.Error(), "\n"+path+": ", "the parser refuses %s, the schema does not: %v", doc, err)
			}
		}
	}
	t.Logf("%d values taken, %d refused", taken, refused)
	require.Greater(t, taken, 50)
	require.Greater(t, refused, 600)
}
