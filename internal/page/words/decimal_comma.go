package words

import (
	"strings"

	"golang.org/x/text/language"
)

// Where numbers are written with a decimal comma, and where within these languages with a
// point: by the Unicode CLDR as golang.org/x/text carries it, to which a test holds the
// two. Its own tables of numbers would be 80 kB of the page's compressed module.
var (
	withComma = set(
		`af agq az-150 az-151 az-RU uz-030 uz-CN ar-DZ ar-LB ar-LY ar-MA ar-MR ar-TN ast az bas
		be bg br bs ca cs cu da de
		dsb dua dyo el en-150 en-BE en-ZA eo es es-AR es-BO es-CL es-CO es-CR es-EC es-PY es-UY
		es-VE et eu ewo ff fi fo fr fur fy gl hr hsb hu hy id is it jgo ka kab kea kk kkj kl km
		ksf ksh ky lb ln lo lt lu lv mgh mk ms-BN mua nb nds nl nmg nn nnh os pl prg ps-AF pt
		qu-BO rn ro ru rw sah se seh sg shi sk sl smn sq sr sr-Latn sv sw-CD tg tk tr tt tzm uk
		und-143 und-AZ und-BA und-ME und-RS und-UZ uz uz-034 uz-AF vi wae wo yav zgh`,
	)
	withPoint = set("de-CH de-LI es-419 it-CH")
)

func set(words string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(words) {
		out[w] = true
	}
	return out
}

// DecimalComma reports whether the numbers of a language are written with a decimal comma.
func DecimalComma(tag language.Tag) bool {
	for ; tag != language.Und; tag = tag.Parent() {
		name := tag.String()
		if withComma[name] || withPoint[name] {
			return withComma[name]
		}
	}
	return false
}
