/** Words of the fit with the buyer's shop. */
export const fitWords = {
  title: "Does it fit my shop?",
  step: "Fit with your shop",
  back: "The listing",
  toShop: "Your shop",
  toEstimate: "Costs",
  none: "The rubric of this kind does not tell its size yet, so nothing can be held against your shop.",
  points: "Point by point",
  cautions: "First",
  missing: "This would settle it",
  landing: "Cost it brings",
  figure: "Figure and source",
  findings: {
    fits: "fits",
    "with-work": "with work",
    "does-not": "does not fit",
    "not-known": "not known",
  } as Record<string, string>,
};
