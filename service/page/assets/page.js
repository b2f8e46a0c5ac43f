// Starts the page: the question first, then what was kept of it, then the answer.

import "./ask.js";
import "./answer.js";
import { start as startQuestion } from "./question.js";
import { start as startKeeping } from "./keep.js";

document.documentElement.classList.add("scripted");
startQuestion();
startKeeping();
