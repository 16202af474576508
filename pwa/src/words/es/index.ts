/** Every group of English words with its Spanish one; a test holds the list to what there is. */
import { archiveWords } from "../archive.ts";
import { benchWords, groupWords, limitWords, standingWords } from "../bench.ts";
import { comparablesWords } from "../comparables.ts";
import { compareWords } from "../compare.ts";
import { rowWords, saveWords, storeFaultWords, valueWords } from "../data.ts";
import { decisionWords } from "../decision.ts";
import { editorWords, engineWords, paperMakerWords } from "../engine.ts";
import { estimateWords } from "../estimate.ts";
import { fileWords, rightWords } from "../file.ts";
import { findWords, standWords } from "../find.ts";
import { fitWords } from "../fit.ts";
import { failureWords, frameWords, storeWords, syncWords, undoWords, updateWords } from "../frame.ts";
import { answerWords, handOverWords, linkWords } from "../hand-over.ts";
import { homeWords } from "../home.ts";
import { importWords } from "../import.ts";
import { conflictWords, listingWords } from "../listing.ts";
import { listingsWords, newListingWords } from "../listings.ts";
import { noticeWords } from "../notice.ts";
import { offerWords } from "../offer.ts";
import { paperWords } from "../papers.ts";
import {
  fieldWords,
  hazardWords,
  moneyWords,
  oddsWords,
  pageWords,
  rangeWords,
  resultWords,
  stepperWords,
  whyWords,
} from "../parts.ts";
import { pairWords, photoViewWords, proofWords } from "../photo.ts";
import { photoWords } from "../photos.ts";
import { pictureWords } from "../picture.ts";
import { pricesTableWords, pricesWords } from "../prices.ts";
import { resultScreenWords } from "../result.ts";
import { rubricWords } from "../rubric.ts";
import { linkTroubleWords, photoRefusedWords, serverWords } from "../server.ts";
import { backupWords, settingsWords } from "../settings.ts";
import { shopWords } from "../shop.ts";
import { uniteWords } from "../unite.ts";
import { visitWords } from "../visit.ts";
import { cautionWords, checkWords, stateWords, walkWords } from "../walkaround.ts";
import { worthWords } from "../worth.ts";
import { archive } from "./archive.ts";
import { bench, group, limit, standing } from "./bench.ts";
import { comparables } from "./comparables.ts";
import { compare } from "./compare.ts";
import { row, save, storeFault, value } from "./data.ts";
import { decision } from "./decision.ts";
import { editor, engine, paperMaker } from "./engine.ts";
import { estimate } from "./estimate.ts";
import { file, right } from "./file.ts";
import { find, stand } from "./find.ts";
import { fit } from "./fit.ts";
import { failure, frame, store, sync, undo, update } from "./frame.ts";
import { answer, handOver, link } from "./hand-over.ts";
import { home } from "./home.ts";
import { imported } from "./import.ts";
import { conflict, listing } from "./listing.ts";
import { listings, newListing } from "./listings.ts";
import { notice } from "./notice.ts";
import { offer } from "./offer.ts";
import { papers } from "./papers.ts";
import { field, hazard, money, odds, page, range, result, stepper, why } from "./parts.ts";
import { pair as photoPair, photoView, proof } from "./photo.ts";
import { photos } from "./photos.ts";
import { picture } from "./picture.ts";
import { prices, pricesTable } from "./prices.ts";
import { resultScreen } from "./result.ts";
import { rubric } from "./rubric.ts";
import { linkTrouble, photoRefused, server } from "./server.ts";
import { backup, settings } from "./settings.ts";
import { shop } from "./shop.ts";
import { unite } from "./unite.ts";
import { visit } from "./visit.ts";
import { caution, check, state, walk } from "./walkaround.ts";
import { worth } from "./worth.ts";

const pair = <T extends object>(english: T, own: T): readonly [object, object] => [english, own];

export const pairs = [
  pair(archiveWords, archive),
  pair(editorWords, editor),
  pair(engineWords, engine),
  pair(fileWords, file),
  pair(linkTroubleWords, linkTrouble),
  pair(paperMakerWords, paperMaker),
  pair(photoRefusedWords, photoRefused),
  pair(pictureWords, picture),
  pair(rightWords, right),
  pair(rowWords, row),
  pair(saveWords, save),
  pair(serverWords, server),
  pair(storeFaultWords, storeFault),
  pair(valueWords, value),
  pair(answerWords, answer),
  pair(handOverWords, handOver),
  pair(linkWords, link),
  pair(paperWords, papers),
  pair(backupWords, backup),
  pair(benchWords, bench),
  pair(cautionWords, caution),
  pair(checkWords, check),
  pair(comparablesWords, comparables),
  pair(compareWords, compare),
  pair(conflictWords, conflict),
  pair(decisionWords, decision),
  pair(estimateWords, estimate),
  pair(failureWords, failure),
  pair(fieldWords, field),
  pair(findWords, find),
  pair(fitWords, fit),
  pair(frameWords, frame),
  pair(groupWords, group),
  pair(hazardWords, hazard),
  pair(homeWords, home),
  pair(importWords, imported),
  pair(limitWords, limit),
  pair(listingWords, listing),
  pair(listingsWords, listings),
  pair(moneyWords, money),
  pair(newListingWords, newListing),
  pair(noticeWords, notice),
  pair(oddsWords, odds),
  pair(offerWords, offer),
  pair(pageWords, page),
  pair(pairWords, photoPair),
  pair(photoViewWords, photoView),
  pair(photoWords, photos),
  pair(pricesTableWords, pricesTable),
  pair(pricesWords, prices),
  pair(proofWords, proof),
  pair(rangeWords, range),
  pair(resultScreenWords, resultScreen),
  pair(resultWords, result),
  pair(rubricWords, rubric),
  pair(settingsWords, settings),
  pair(shopWords, shop),
  pair(standWords, stand),
  pair(standingWords, standing),
  pair(stateWords, state),
  pair(stepperWords, stepper),
  pair(storeWords, store),
  pair(syncWords, sync),
  pair(undoWords, undo),
  pair(uniteWords, unite),
  pair(updateWords, update),
  pair(visitWords, visit),
  pair(walkWords, walk),
  pair(whyWords, why),
  pair(worthWords, worth),
];
