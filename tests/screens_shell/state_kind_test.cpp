#include "screens/state_kind.h"

#include <QMetaEnum>
#include <gtest/gtest.h>

#include "shape_kind.h"

namespace jambline::screens {
namespace {

TEST(StateKind, EachStateIsTheShapeOfTheSameName) {
  const QMetaEnum shapes = QMetaEnum::fromType<ShapeKind::Value>();
  const std::pair<StateKind, const char*> states[] = {
      {StateKind::None, "None"},       {StateKind::Done, "Done"},
      {StateKind::Running, "Running"}, {StateKind::Waits, "Waits"},
      {StateKind::Must, "Must"},       {StateKind::NotYet, "NotYet"},
      {StateKind::Unseen, "Unseen"},   {StateKind::Disputed, "Disputed"},
      {StateKind::Respray, "Respray"}, {StateKind::Paused, "Paused"},
      {StateKind::Ring, "Ring"},
  };
  EXPECT_EQ(shapes.keyCount(), static_cast<int>(std::size(states)));
  for (const auto& [state, name] : states)
    EXPECT_EQ(shapes.keyToValue(name), shape_of(state)) << name;
}

}  // namespace
}  // namespace jambline::screens
