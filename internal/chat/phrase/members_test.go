package phrase

import (
	"testing"

	"pgregory.net/rapid"
)

// A code is taken as typed, whatever words it begins with: "CODU-…" is no
// misspelt "code".
func TestCodesAreTakenAsTyped(t *testing.T) {
	four := rapid.StringMatching(`[A-Z2-7]{4}`)
	rapid.Check(t, func(t *rapid.T) {
		code := four.Draw(t, "a") + "-" + four.Draw(t, "b") + "-" + four.Draw(t, "c") + "-" + four.Draw(t, "d")
		for _, sentence := range []string{"claim " + code, "join " + code, "join with code " + code} {
			intents := Parse(sentence, Names{}).Intents
			if len(intents) != 1 || intents[0] != (Claim{Code: code}) {
				t.Errorf("%q is read as %v", sentence, intents)
			}
		}
	})
	for _, code := range []string{"CODU-AHBN-ELG7-PYPZ", "IS2P-2FUO-3ZP6-NJG7", "RTOM-3JH6-ZHBK-YXOK", "OCDE-VWOR-7X4U-UV2D", "THE2-2222-2222-2222"} {
		for _, before := range []string{"claim ", "join with code "} {
			if got := Parse(before+code, Names{}).Intents; len(got) != 1 || got[0] != (Claim{Code: code}) {
				t.Errorf("%s%s is read as %v", before, code, got)
			}
		}
	}
}
