#include "folds/find_words.h"

#include <set>

namespace jambline::folds {

namespace {

constexpr std::string_view person_family = "person";
constexpr std::string_view booth_family = "booth";
constexpr std::string_view product_family = "product";
constexpr std::size_t least_end_of_plate = 2;
constexpr std::size_t least_end_of_vin = 4;

void add_line(std::string& text, std::string_view line) {
  if (line.empty()) return;
  if (!text.empty()) text.push_back('\n');
  text.append(line);
}

// The whole of it, and its ends of at least so many bytes.
void add_parts(std::string& parts, const std::string& whole, std::size_t least) {
  const auto add = [&](std::string_view end) {
    if (!parts.empty()) parts.push_back(' ');
    parts.append(end);
  };
  if (whole.empty()) return;
  add(whole);
  for (std::size_t from = 1; from + least <= whole.size(); ++from)
    if ((static_cast<unsigned char>(whole[from]) & 0xC0U) != 0x80U)  // where a letter begins
      add(std::string_view(whole).substr(from));
}

class Document {
 public:
  explicit Document(const CarView& car) : car_(car) {
    labels();
    panels();
    operations();
    visit();
    air();
    corrections();
    people();
    stages();
    for (const auto& code : codes_) {
      if (!words().codes.empty()) words().codes.push_back(' ');
      words().codes += code;
    }
  }
  Findable take() { return std::move(out_); }

 private:
  FindWords& words() { return out_.words; }
  FindFacts& facts() { return out_.facts; }
  template <class T>
  void code(const T& value) {
    codes_.insert(find_code(value));
  }
  void person(const PersonId& who) {
    if (who) code(who);
  }

  void labels() {
    words().plate = car_.plate;
    words().vin = car_.vin;
    words().color = car_.color.name;
    add_line(words().color, car_.color.code);
    std::vector<std::string> plates{car_.plate};
    std::vector<std::string> vins{car_.vin};
    for (const auto& conflict : car_.conflicts)
      for (const auto& other : conflict.others) {
        if (conflict.label == "plate") {
          add_line(words().plate, other);
          plates.push_back(other);
        } else if (conflict.label == "vin") {
          add_line(words().vin, other);
          vins.push_back(other);
        } else if (conflict.label == "color") {
          add_line(words().color, other);
        }
      }
    for (const auto& plate : plates) add_parts(words().parts, squeezed(plate), least_end_of_plate);
    for (const auto& vin : vins) add_parts(words().parts, squeezed(vin), least_end_of_vin);
    if (const auto color = squeezed(car_.color.code); !color.empty())
      words().parts += (words().parts.empty() ? "" : " ") + color;
    code(car_.body);
    facts().opened_ms = car_.opened_ms;
    facts().delivered_ms = car_.delivered_ms;
    facts().promised_ms = car_.promised_ms;
    if (car_.booth) code(*car_.booth);
  }

  void release(const ReleaseView& one) {
    if (one.state == ReleaseState::None) return;
    person(one.giver);
    if (one.taker) person(*one.taker);
    add_line(words().reasons, one.reason);
    facts().disputed = facts().disputed || one.disputed;
  }

  void panels() {
    for (const auto& panel : car_.panels) {
      code(panel.plan.panel);
      facts().disputed = facts().disputed || panel.disputed;
      if (panel.verdict == job::Verdict::Redo || panel.verdict == job::Verdict::BackToBody ||
          panel.verdict == job::Verdict::Ask)
        code(panel.verdict);
      facts().redo = facts().redo || panel.verdict == job::Verdict::Redo;
      for (const auto& mark : panel.marks) {
        code(mark.defect);
        if (mark.end == job::MarkEnd::BurnThrough) code(job::DefectKind::BurnThrough);
      }
      release(panel.release);
    }
    release(car_.car_release);
  }

  void operations() {
    for (const auto& operation : car_.operations) {
      add_line(words().work, operation.title);
      add_line(words().work, operation.why);
      if (operation.work == job::WorkKind::FirstTime) continue;
      code(operation.work);
      facts().redo = facts().redo || operation.work == job::WorkKind::Redo;
    }
  }

  void visit() {
    const VisitView& visit = car_.visit;
    for (const auto& note : visit.notes) add_line(words().notes, note.text);
    for (const auto& picture : car_.pictures) {
      person(picture.by);
      for (const auto& note : picture.notes) add_line(words().notes, note.drawn.text);
      if (picture.edges)
        for (const auto find : picture.edges->finds) code(find);
    }
    for (const auto& part : visit.parts) add_line(words().work, part.said.part_name);
    for (const auto& sublet : visit.sublets) add_line(words().work, sublet.said.who);
    for (const auto& wait : visit.waits) code(wait.reason);
    if (visit.check_in) {
      add_line(words().customer, visit.check_in->said.old_damage);
      add_line(words().customer, visit.check_in->said.warning_lamps);
      add_line(words().customer, visit.check_in->said.state_of_pack);
    }
    for (const auto& one : visit.signatures) add_line(words().customer, one.signer);
    for (const auto& one : visit.comebacks) {
      add_line(words().customer, one.complaint);
      add_line(words().customer, one.who_pays);
      facts().came_back = true;
    }
    for (const auto& act : visit.amended) {
      add_line(words().reasons, act.reason);
      facts().amended = true;
    }
  }

  void air() {
    for (const auto& spray : car_.air.sprays) {
      code(spray.booth);
      for (const auto& check : spray.checks) {
        add_line(words().reasons, check.note);
        const bool passed_over = job::class_of(check.item) == job::CheckClass::Must &&
                                 check.answer == job::CutAnswer::No;
        if (!passed_over) continue;
        facts().spray_override = true;
        code(check.item);
        if (check.reason) code(*check.reason);
      }
    }
    for (const auto& without : car_.air.without) {
      code(without.booth);
      for (const auto item : without.items) code(item);
      facts().sprayed_without = true;
    }
    for (const auto& mix : car_.air.mixes) {
      code(mix.product);
      add_line(words().work, mix.batch);
    }
    for (const auto& bond : car_.air.bonds) {
      code(bond.product);
      add_line(words().work, bond.what);
    }
  }

  void corrections() {
    for (const auto& one : car_.before_cut)
      for (const auto& check : one.checks)
        if (check.reason) {
          facts().other_override = true;
          code(check.item);
          code(*check.reason);
        }
    for (const auto& step : car_.assembly.steps)
      for (const auto& broken : step.broken) {
        facts().other_override = true;
        code(step.step);
        code(broken.reason);
      }
    if (!car_.cause) return;
    facts().disputed = facts().disputed || car_.cause->disputed;
    if (car_.cause->cause && !car_.cause->disputed) code(*car_.cause->cause);
  }

  void people() {
    for (const auto& seen : car_.seen) person(seen.person);
    for (const auto& worked : car_.worked) person(worked.person);
    for (const auto& running : car_.running) person(running.person);
  }

  void stages() {
    for (const auto& stage : car_.stages) {
      if (!stage.done && !facts().next_stage) facts().next_stage = stage.stage;
      if (stage.done && stage.shots_missing.value_or(0) > 0) facts().pictures_missing = true;
    }
    if (facts().next_stage) code(*facts().next_stage);
  }

  const CarView& car_;
  Findable out_;
  std::set<std::string> codes_;
};

}  // namespace

std::string find_code(const PersonId& person) {
  return std::string(person_family) + person.hex();
}
std::string find_code(const BoothId& booth) {
  return std::string(booth_family) + booth.hex();
}
std::string find_code(const ProductId& product) {
  return std::string(product_family) + product.hex();
}

FindField field_of_code(std::string_view code) {
  if (code.substr(0, person_family.size()) == person_family) return FindField::Person;
  if (code.substr(0, booth_family.size()) == booth_family) return FindField::Booth;
  if (code.substr(0, product_family.size()) == product_family) return FindField::Product;
  return FindField::Kind;
}

std::vector<NamedCode> named_of_shop(const ShopView& shop) {
  std::vector<NamedCode> out;
  for (const auto& one : shop.people)
    if (!one.name.empty()) out.push_back({find_code(one.person), one.name});
  for (const auto& one : shop.booths) out.push_back({find_code(one.booth), one.name});
  for (const auto& one : shop.air.products)
    out.push_back({find_code(one.product), one.said.product_name});
  return out;
}

std::string squeezed(std::string_view text) {
  std::string out;
  for (const char sign : text) {
    const bool plain = (sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'z') ||
                       (sign >= 'A' && sign <= 'Z');
    if (plain || static_cast<unsigned char>(sign) >= 0x80U) out.push_back(sign);
  }
  return out;
}

Findable findable(const CarView& car) {
  return Document(car).take();
}

}  // namespace jambline::folds
