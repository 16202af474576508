/** The shape of a finding, beside its words: ring, triangle, filled block, equals. */
export function FindingMark({ finding }: { finding: string }) {
  return (
    <svg class="finding-mark" viewBox="0 0 24 24" aria-hidden="true">
      {finding === "within limit" && <circle cx={12} cy={12} r={8.5} />}
      {finding === "watch" && <path d="M12 3.5 22 20.5H2Z" />}
      {finding === "beyond limit" && <path class="finding-solid" d="M3 3h18v18H3Z" />}
      {finding === "computed" && <path d="M4 9h16M4 15h16" />}
    </svg>
  );
}
