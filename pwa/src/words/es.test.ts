import { expect, test } from "vitest";
import { pairs } from "./es/index.ts";

const modules = import.meta.glob<Record<string, unknown>>(["./*.ts", "!./*.test.ts", "!./tongue.ts"], {
  eager: true,
});

test("every group of words has its Spanish one", () => {
  const paired = new Set(pairs.map(([english]) => english));
  const lacking = Object.entries(modules).flatMap(([file, words]) =>
    Object.entries(words)
      .filter(([, group]) => typeof group === "object" && group !== null && !paired.has(group))
      .map(([name]) => `${file} ${name}`),
  );
  expect(lacking).toEqual([]);
});

test("no Spanish text is left empty or as it is in English", () => {
  // What reads the same in both.
  const same = new Set(["Asfound", "Comparables", "Total", "no", "Error"]);
  const left: string[] = [];
  const look = (at: string, english: unknown, own: unknown): void => {
    if (typeof english === "string") {
      if (own === "" && english !== "") left.push(`${at} is empty`);
      if (own === english && /[a-z]{3} [a-z]{3}/i.test(english) && !same.has(english)) left.push(at);
    } else if (typeof english === "object" && english !== null && typeof own === "object" && own !== null) {
      for (const [key, value] of Object.entries(english)) {
        if (!(key in own)) left.push(`${at}.${key} is missing`);
        else look(`${at}.${key}`, value, (own as Record<string, unknown>)[key]);
      }
    }
  };
  for (const [i, [english, own]] of pairs.entries()) look(`pair ${i}`, english, own);
  expect(left).toEqual([]);
});
