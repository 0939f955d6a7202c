#include "questions_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/question_view_model.h"

namespace jambline::walk {

namespace {
using screens::QuestionViewModel;

void wait_for(Shop& shop, const QuestionViewModel& ask) {
  settle(shop.window());
  settle_until(shop, [&] { return ask.state() != QuestionViewModel::Waiting; });
  settle_until(shop, [&] { return !shop.program().session().calculating(); });
  settle(shop.window());
}

QuestionViewModel* asked(Shop& shop, const char* question, int view) {
  auto* ask = model<QuestionViewModel>(shop, "question");
  if (!ask) return nullptr;
  ask->choose(QString::fromLatin1(question));
  if (!place(shop, "Record", "Question")) return nullptr;
  ask->showSpan(QuestionViewModel::Year);
  ask->toNow();
  ask->showView(view);
  wait_for(shop, *ask);
  return ask;
}

Screen question(const char* name, const char* key, int view) {
  return {name, false, [key, view](Shop& shop) { return asked(shop, key, view) != nullptr; }};
}

// The cars of the first row; a row of a table is picked first. Without a row the page is empty.
bool cases(Shop& shop) {
  auto* ask = asked(shop, "late", 0);
  if (!ask) return false;
  if (ask->rowCount() == 0) return true;
  if (!press(shop, "questionRow0")) return false;
  return ask->openTitle().isEmpty() ? press(shop, "questionRow0") : true;
}

bool table_of_question(Shop& shop) {
  auto* ask = asked(shop, "hours", 0);
  if (!ask) return false;
  return ask->rowCount() == 0 || press(shop, "questionExport");
}

bool all_questions(Shop& shop) {
  if (!place(shop, "Record", "None")) return false;
  const auto* fold = named(*shop.window().contentItem(), QStringLiteral("questionsFold"));
  return fold && (fold->property("chosen").toBool() || press(shop, "questionsFold"));
}
}  // namespace

std::vector<Screen> questions_screens() {
  return {
      question("question-hours", "hours", 0),
      question("question-hours-people", "hours", 1),
      question("question-flow", "flow", 0),
      question("question-waits", "flow", 1),
      question("question-first-time", "first-time", 0),
      question("question-dirt", "dirt", 0),
      question("question-sprays", "sprays", 0),
      question("question-due", "due", 0),
      question("question-late", "late", 0),
      question("question-pictures", "pictures", 0),
      {"question-cases", false, cases},
      {"question-table", false, table_of_question},
      {"questions", false, all_questions},
  };
}

}  // namespace jambline::walk
