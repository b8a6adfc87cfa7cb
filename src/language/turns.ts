/** Words that turn what stands before them into its opposite, or into something yet to come: no remark may hide them. */
const TURNS =
  /^\s*(?:(?:is|are|was|were|all|now|been|still|have|had)\s+)*(?:not|no|never|skipped|due|overdue|needed|tomorrow|soon|later|next|late|less|low|ready|lost|gone|down|white|fungused|pulled|hatched|eaten|removed|cancelled|stopped|over|ended|dead|died|dying|empty|blocked|clogged|swapped|replaced|cleared|cured|healed|recovered|better|infertile|rotten|mould(?:y|ed)|mold(?:y|ed))(?!\p{L})/iu;

/** Whether words begin so. */
export function turns(words: string): boolean {
  return TURNS.test(words);
}
