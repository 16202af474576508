import { expect, test } from "vitest";
import { readOdds } from "./odds-field.tsx";

const texts = (opening: string, fair: string, walk_away: string) => ({ opening, fair, walk_away });

test("odds are kept in basis points", () => {
  expect(readOdds(texts("90", "75", "50"))).toEqual({ opening: 9000, fair: 7500, walk_away: 5000 });
  expect(readOdds(texts("82,5", "75 %", "75"))).toEqual({ opening: 8250, fair: 7500, walk_away: 7500 });
});

test("odds that rise, leave their bounds or are no numbers are refused", () => {
  for (const wrong of [
    texts("50", "75", "90"),
    texts("90", "49", "50"),
    texts("100", "75", "50"),
    texts("90", "75", "0"),
    texts("90", "", "50"),
  ]) {
    expect(readOdds(wrong)).toBeTypeOf("string");
  }
});
