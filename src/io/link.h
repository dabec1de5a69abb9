#pragma once

// A job in the part of an address after '#': "job=" and base64url (RFC 4648, no padding) of
//
//   schema, engine edition, list of steps and values     CBOR, RFC 8949, in its shortest forms (4.2.1)
//   CRC-32 of all that, most significant byte first      4 bytes
//
// In the list each field is a step, from the number of the field before, and its value. Links of the first
// editions hold a map of field number to value instead, and open as ever.
// A number is stored as a count of its field's quantum, a choice as its position, text as text.
// Only given values travel. One job gives one link: what is read and written again has the same
// bytes.
//
// A link is hostile input. It may come with its address in front, with line breaks inside and with
// a full stop behind; a link that is cut off or altered is told as such.

#include <string>
#include <string_view>

#include "base/issue.h"
#include "job/job.h"

namespace thole {

// "job=...": append it to the page's address after '#'.
std::string write_link(const Job& job);

struct LinkRead {
  Job job;
  int edition = 0;  // of the engine that the link was made with; 0 when it could not be read
  Issues issues{};
};
LinkRead read_link(std::string_view address_or_fragment);

}  // namespace thole
