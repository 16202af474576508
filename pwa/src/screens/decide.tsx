import "../style/money.css";
import "../style/charts.css";
import "../style/compare.css";
import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { decide, MOST_REASON } from "../data/decision.ts";
import { compare } from "../engine/engine.ts";
import type { File as AppraisalFile } from "../generated/types.ts";
import { described, Labelled } from "../parts/field.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { moneyText, readMoney } from "../parts/money.ts";
import { Banner, Page } from "../parts/page.tsx";
import { program } from "../parts/program.ts";
import { useComparison } from "../parts/use-comparison.ts";
import { compareWords } from "../words/compare.ts";
import { decisionWords as words } from "../words/decision.ts";
import { chosenIn } from "./chosen-in.ts";
import { inOrder, type Lettered } from "./compare-side.ts";
import { today } from "./today.ts";

/** Closing a comparison: what was bought, at what price, when and why. */
export function DecideScreen() {
  const { query } = useLocation();
  const ids = chosenIn(query.of);
  const { comparison, files, problem } = useComparison(ids);
  return (
    <Page title={words.title} back={`/compare?of=${ids.join(",")}`} backTitle={words.toCompare}>
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      {!problem && (!comparison || !files) && <p role="status">{compareWords.loading}</p>}
      {!problem && comparison && files && (
        <Form ids={ids} files={files} sides={inOrder(comparison, ids)} currency={comparison.currency} />
      )}
    </Page>
  );
}

const none = "none";

interface Draft {
  chosen: string;
  price: string;
  date: string;
  reason: string;
  acknowledged: string;
  /** Ticks in the list of listings. */
  bought: boolean;
  gone: string[];
}

/** What was typed is kept for this comparison while the app is open: a call must not cost it. */
const drafts = new Map<string, Draft>();

function useDecision(key: string) {
  const [draft, setDraft] = useState<Draft>(
    () =>
      drafts.get(key) ?? {
        chosen: "",
        price: "",
        date: today(),
        reason: "",
        acknowledged: "",
        bought: true,
        gone: [],
      },
  );
  const set = (part: Partial<Draft>) =>
    setDraft((now) => {
      const next = { ...now, ...part };
      drafts.set(key, next);
      return next;
    });
  return { draft, set };
}

type Problems = Partial<Record<"chosen" | "price" | "date" | "reason" | "acknowledged", string>>;

function problemsOf(draft: Draft, side: Lettered | undefined, currency: string): Problems {
  const out: Problems = {};
  const long = (text: string) => {
    const have = [...text].length;
    return have > MOST_REASON ? words.tooLong(have, MOST_REASON) : undefined;
  };
  if (draft.chosen === "") out.chosen = words.needWhich;
  if (side) {
    const price = readMoney(draft.price, currency).problem;
    if (draft.price.trim() === "") out.price = words.needPrice;
    else if (price !== undefined) out.price = price;
    if (side.side.gate !== "") {
      const wrong = draft.acknowledged.trim() === "" ? words.needAcknowledged : long(draft.acknowledged);
      if (wrong) out.acknowledged = wrong;
    }
  }
  if (!/^\d{4}-\d{2}-\d{2}$/.test(draft.date) || draft.date > today() || draft.date < "1900") {
    out.date = words.needDate;
  }
  const reason = draft.reason.trim() === "" ? words.needReason : long(draft.reason);
  if (reason) out.reason = reason;
  return out;
}

function Form(props: { ids: string[]; files: AppraisalFile[]; sides: Lettered[]; currency: string }) {
  const { ids, files, sides, currency } = props;
  const key = ids.join(",");
  const { route } = useLocation();
  const { draft, set } = useDecision(key);
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<string | undefined>(undefined);
  const chosen = sides.find((s) => s.id === draft.chosen);
  const problems = problemsOf(draft, chosen, currency);
  const say = tried ? problems : {};
  const write = async () => {
    setTried(true);
    if (busy) return;
    if (Object.keys(problems).length > 0) return;
    setBusy(true);
    try {
      const cents = chosen ? (readMoney(draft.price, currency).cents ?? null) : null;
      // The figures that are kept are those at the price paid.
      const comparison = await compare(
        files,
        ids.map((id) => (id === chosen?.id ? cents : null)),
      );
      const id = await decide(
        words.label,
        {
          date: draft.date,
          chosen: chosen?.id ?? null,
          price: cents,
          reason: draft.reason.trim(),
          acknowledged: chosen && chosen.side.gate !== "" ? draft.acknowledged.trim() : "",
          program: program(),
        },
        comparison,
        ids.map((of, i) => ({ id: of, asked: files[i]?.listing.asking ?? undefined })),
        [
          ...(chosen && draft.bought ? [{ id: chosen.id, state: "bought" as const }] : []),
          ...draft.gone
            .filter((of) => ids.includes(of) && of !== chosen?.id)
            .map((of) => ({ id: of, state: "let-go" as const })),
        ],
      );
      drafts.delete(key);
      route(`/decisions/${id}`, true);
    } catch (cause) {
      setFailed(cause instanceof Error ? cause.message : String(cause));
      setBusy(false);
    }
  };
  const open = Object.values(say);
  return (
    <form
      class="decide"
      noValidate
      onSubmit={(e) => {
        e.preventDefault();
        void write();
      }}
    >
      <p>{words.lead}</p>
      <Which
        sides={sides}
        value={draft.chosen}
        problem={say.chosen}
        choose={(to, price) => set({ chosen: to, price })}
      />
      {chosen && (
        <Text
          label={`${words.price} (${currency})`}
          hint={words.priceHint}
          problem={say.price}
          value={draft.price}
          set={(price) => set({ price })}
          money
        />
      )}
      {chosen && chosen.side.gate !== "" && (
        <div class="decide-barred">
          <p class="card-verdict">
            <Hazard word={chosen.side.verdict.hazard} /> <b>{words.barredTitle}</b>
          </p>
          <p>{words.barredLead(chosen.side.verdict.title)}</p>
          <Text
            label={words.acknowledged}
            hint={words.acknowledgedHint}
            problem={say.acknowledged}
            value={draft.acknowledged}
            set={(acknowledged) => set({ acknowledged })}
            lines={3}
          />
        </div>
      )}
      <Day value={draft.date} problem={say.date} set={(date) => set({ date })} />
      <Text
        label={words.reason}
        hint={words.reasonHint}
        problem={say.reason}
        value={draft.reason}
        set={(reason) => set({ reason })}
        lines={4}
      />
      <Ticks sides={sides} chosen={chosen} draft={draft} set={set} />
      {open.length > 0 && (
        <div class="field-problem" role="alert">
          <span>{words.wrong(open.length)}</span>
          <ul class="always">
            {open.map((what) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </div>
      )}
      {failed && (
        <Banner tone="problem" urgent>
          {failed}
        </Banner>
      )}
      <button type="submit" class="button button-main" disabled={busy}>
        {busy ? words.writing : words.write}
      </button>
    </form>
  );
}

function Which(props: {
  sides: Lettered[];
  value: string;
  problem: string | undefined;
  choose: (id: string, price: string) => void;
}) {
  const name = useId();
  const option = (id: string, price: string, label: ComponentChildren) => (
    <label key={id} class="choice-item">
      <input
        type="radio"
        name={name}
        value={id}
        checked={props.value === id}
        onChange={() => props.choose(id, price)}
      />
      <span dir="auto">{label}</span>
    </label>
  );
  return (
    <fieldset class={props.problem ? "field field-wrong choice" : "field choice"}>
      <legend class="field-label">{words.which}</legend>
      <div class="choice-list">
        {props.sides.map(({ id, letter, side }) =>
          option(
            id,
            side.price === null ? "" : moneyText(side.price),
            <>
              {words.bought(letter, side.title)}
              <span class="row-note">
                <Hazard word={side.verdict.hazard} small /> {side.verdict.title}
              </span>
            </>,
          ),
        )}
        {option(none, "", words.noneOfThem)}
      </div>
      {props.problem && (
        <p class="field-problem" role="alert">
          {props.problem}
        </p>
      )}
    </fieldset>
  );
}

function Text(props: {
  label: string;
  hint: string;
  problem: string | undefined;
  value: string;
  set: (text: string) => void;
  lines?: number;
  money?: boolean;
}) {
  const dom = useId();
  const shared = {
    id: dom,
    value: props.value,
    dir: "auto" as const,
    ...described(dom, props.hint, props.problem),
  };
  return (
    <Labelled label={props.label} for={dom} hint={props.hint} problem={props.problem}>
      {props.lines ? (
        <textarea {...shared} rows={props.lines} onInput={(e) => props.set(e.currentTarget.value)} />
      ) : (
        <input
          {...shared}
          type="text"
          autocomplete="off"
          inputMode={props.money ? "decimal" : "text"}
          onInput={(e) => props.set(e.currentTarget.value)}
        />
      )}
    </Labelled>
  );
}

function Day(props: { value: string; problem: string | undefined; set: (date: string) => void }) {
  const dom = useId();
  return (
    <Labelled label={words.date} for={dom} hint={words.dateHint} problem={props.problem}>
      <input
        id={dom}
        type="date"
        max={today()}
        value={props.value}
        onInput={(e) => props.set(e.currentTarget.value)}
        {...described(dom, words.dateHint, props.problem)}
      />
    </Labelled>
  );
}

/** What becomes of the listings; offered, never done unasked. */
function Ticks(props: {
  sides: Lettered[];
  chosen: Lettered | undefined;
  draft: Draft;
  set: (part: Partial<Draft>) => void;
}) {
  const { sides, chosen, draft, set } = props;
  if (draft.chosen === "") return null;
  return (
    <fieldset class="field choice">
      <legend class="field-label">{words.states}</legend>
      <div class="choice-list">
        {chosen && (
          <label class="choice-item">
            <input type="checkbox" checked={draft.bought} onChange={() => set({ bought: !draft.bought })} />
            <span>{words.markBought(chosen.letter)}</span>
          </label>
        )}
        {sides
          .filter((s) => s !== chosen)
          .map((s) => {
            const ticked = draft.gone.includes(s.id);
            return (
              <label key={s.id} class="choice-item">
                <input
                  type="checkbox"
                  checked={ticked}
                  onChange={() =>
                    set({ gone: ticked ? draft.gone.filter((id) => id !== s.id) : [...draft.gone, s.id] })
                  }
                />
                <span dir="auto">{words.markGone(s.letter, s.side.title)}</span>
              </label>
            );
          })}
      </div>
    </fieldset>
  );
}
