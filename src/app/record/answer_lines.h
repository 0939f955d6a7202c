// app/record/answer_lines.h: answers to a manager's questions as lines for a terminal, each number
// with what it rests on.
#pragma once

#include <ostream>

#include "folds/dirt_question.h"
#include "folds/due_question.h"
#include "folds/first_time_question.h"
#include "folds/flow_question.h"
#include "folds/hours_question.h"
#include "folds/late_question.h"
#include "folds/pictures_question.h"
#include "folds/shop_view.h"
#include "folds/spray_question.h"

namespace jambline::app {

void print_answer(std::ostream& out, const folds::HoursAnswer& answer, const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::FlowAnswer& answer, const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::FirstTimeAnswer& answer,
                  const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::DirtAnswer& answer, const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::SprayAnswer& answer, const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::DueAnswer& answer, const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::LateAnswer& answer, const folds::ShopView& shop);
void print_answer(std::ostream& out, const folds::PicturesAnswer& answer,
                  const folds::ShopView& shop);

}  // namespace jambline::app
