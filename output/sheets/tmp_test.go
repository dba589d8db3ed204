package sheets
import ("testing";"fmt";"slices")
func TestTmp(t *testing.T){
 for _, d := range realDecks(t) {
  for _, p := range []PaperSize{Letter} {
  s := newSetter(d.deck, Pages{Paper:p})
  rs := len(slices.Collect(s.runSheet(d.deck)))
  ss := len(slices.Collect(s.setupSheets(d.deck)))
  pc := len(slices.Collect(s.pieceCards(d.deck)))
  over := ""
  for i := range d.deck.Setups { sh := s.setupSheet(d.deck,i,s.body().H); f,_ := s.head(d.deck,i,s.minds[d.deck.Setups[i].Number],1); over += fmt.Sprintf(" %d(%dr %dp h%.0f b%.0f last%.0f)", len(sh), len(d.deck.Setups[i].Runs), len(d.deck.Setups[i].Marks), f.H, s.mindBox(s.minds[d.deck.Setups[i].Number], s.frame.W).H, sh[len(sh)-1].H) }
  t.Logf("%s %s: %d run %d setups %d cards %d | max %d |%s", d.Name, p, mostPages(d)-6-rs-ss-pc,  rs, ss, pc, mostPages(d)-6, over)
 }}
}
