// An evidence bundle, as somebody may hand it in: the ZIP and all that lies in it.
#include <iterator>

#include "evidence/check_bundle.h"
#include "evidence/layout.h"
#include "evidence/zip_writer.h"
#include "seal/pack.h"
#include "tests/fuzz/memory_folder.h"
#include "tests/fuzz/promise.h"
#include "tests/seal/format_examples.h"
#include "tests/whole_file.h"

namespace jambline::fuzz {

namespace {
using namespace jambline::evidence;

std::string bundle_of(const std::vector<seal::SealedEntry>& theirs, Form form) {
  const auto file = memory_folder() / "bundle.zip";
  std::filesystem::remove(file);
  auto zip = ZipWriter::create(file);
  hold(zip.has_value());
  std::string mine;
  for (const auto& entry : {seal::founded_example(), seal::admitted_example()})
    mine += encode_record(Form::Whole, entry);
  std::string other;
  for (const auto& entry : theirs) other += encode_record(form, entry);
  hold(zip->add_text("report.txt", "words").has_value());
  hold(
      zip->add_text(std::string(receipts_name), seal::encode(seal::receipt_example())).has_value());
  hold(zip->add_text(chain_name(seal::founder().device()), mine).has_value());
  hold(zip->add_text(chain_name(seal::second().device()), other).has_value());
  hold(zip->add_text(picture_name(seal::note_example().hash, {}), "no picture").has_value());
  hold(zip->close({}, {}).has_value());
  return test::whole_file(file);
}
}  // namespace

// First byte: a whole ZIP, or one record of a chain; the rest: its bytes.
std::vector<std::string> bundle_seeds() {
  std::vector<std::string> out;
  for (const Form form : {Form::Bare, Form::Signed, Form::Whole}) {
    out.push_back('\0' + bundle_of({seal::note_example()}, form));
    out.push_back('\1' + encode_record(form, seal::note_example()).substr(4));
  }
  out.push_back('\0' + bundle_of({seal::erased_example()}, Form::Whole));
  out.push_back('\0' + bundle_of({}, Form::Whole));
  return out;
}

void run_bundle(Input input) {
  if (input.empty()) return;
  const Input bytes = input.subspan(1);
  if (input[0] % 2 == 1) {
    const auto record = decode_record(bytes);
    if (!record) return;
    hold(encode_record(record->form, record->entry).substr(4) == text_of(bytes));
    (void)named_picture(record->entry.payload);
    return;
  }
  const auto found = check_bundle(bytes);
  if (!found) {
    hold(!code_name(found.error().code).empty());
    return;
  }
  hold(!lines_of(*found).empty());
  hold(found->entries + found->others + found->bare <= bytes.size() / seal::header_bytes);
  if (found->first_bad) return;
  // Nobody has the keys: what is good is what the founder and the second device signed.
  hold(found->shop == seal::example_header().shop);
  hold(found->job == seal::note_example().header.subject);
  for (const auto& head : found->heads) hold(head.seq <= 2);
}

}  // namespace jambline::fuzz
